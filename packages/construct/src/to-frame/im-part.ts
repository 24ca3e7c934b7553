/**
 * The IM pin: a straight beam in the canal. Sleeves where pin and wall can touch, each with the room that is left
 * there; spongy bone at both ends holds it sideways and, a little, along and about itself. Tied in, its end is bent
 * outside the bone and runs to the column.
 */
import { clearanceAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Vec3, Vec6 } from '@bonewright/frame';
import type { Case } from '../model/case-file.ts';
import type { Figures, ImFigures } from '../model/figures.ts';
import { imLine } from './im-line.ts';
import type { Layout } from './layout.ts';
import { columnNode, type Mesh } from './mesh.ts';
import { addColumnEnd, rodMaterial, rodSection } from './pin-part.ts';
import type { FrameSink } from './sink.ts';

const ALONG: Vec3 = [1, 0, 0];

export const imNode = (i: number): string => `IM${i + 1}`;
export const imPieceName = (i: number): string => `IM.${i + 1}`;
export const IM_ARM = 'IM.arm';
const IM_BEND = 'IM.bend';
const IM_END = 'IM.end';

/** Adds the IM pin, if the construct has one. */
export function addIm(sink: FrameSink, patientCase: Case, mesh: Mesh, layout: Layout, figures: Figures): void {
  const { im } = figures;
  if (!im) return;
  const line = imLine(patientCase, figures);
  const material = rodMaterial('IM', im);
  const last = mesh.imSites.length - 1;
  mesh.imSites.forEach((site, i) => {
    const [y, z] = line.at(site.sMm);
    sink.node(imNode(i), [site.sMm, y, z]);
    if (i > 0) sink.member(imPieceName(i), imNode(i - 1), imNode(i), rodSection(im), material);
    if (i === 0 || i === last) sink.spring(`${imNode(i)}.seat`, imNode(i), site.name, seat(im));
    else {
      const room = clearanceAt(figures.profile, line, im.diameterMm, site.sMm);
      const k = value('interface.canal.contact') * figures.boneYoungMPa * im.diameterMm;
      sink.sleeve(`${imNode(i)}.sleeve`, imNode(i), site.name, ALONG, room, k);
    }
  });
  addTie(sink, mesh, layout, figures, im);
}

/** Spongy bone: its modulus over a length of some diameters sideways, a share of that along and about the pin. */
function seat({ diameterMm }: ImFigures): Vec6 {
  const sideways = value('interface.seat.modulus') * value('interface.seat.length') * diameterMm;
  const slip = sideways * value('interface.seat.slip-share');
  return [slip, sideways, sideways, slip * (diameterMm / 2) ** 2, 0, 0];
}

function addTie(sink: FrameSink, mesh: Mesh, layout: Layout, figures: Figures, im: ImFigures): void {
  const column = mesh.columns.findIndex((stops) => stops.some((s) => s.what === 'im'));
  const bend = layout.imBend;
  if (column < 0 || !bend) return;
  sink.node(IM_BEND, bend.crossing);
  sink.member(imPieceName(0), IM_BEND, imNode(0), rodSection(im), rodMaterial('IM', im));
  addColumnEnd(sink, IM_END, columnNode(column, 'im'), figures, im, bend, bend.heldMm);
  sink.member(IM_ARM, IM_BEND, IM_END, rodSection(im), rodMaterial('IM', im));
}
