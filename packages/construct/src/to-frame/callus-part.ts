/** Callus: a short round column of soft bone between the fracture faces, wider than the bone. */
import { fragmentsOf, sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Case } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { axisAt } from './bone-part.ts';
import { DISTAL_FACE, PROXIMAL_FACE } from './mesh.ts';
import type { FrameSink } from './sink.ts';
import { lengthOf, minus, plus } from './vectors.ts';

export const CALLUS = 'callus';

/** Adds the callus, if there is one: as long as the gap is open, or a share of the bone's width where that is more. */
export function addCallus(sink: FrameSink, patientCase: Case, figures: Figures): void {
  const { callusYoungMPa, profile } = figures;
  if (callusYoungMPa === null) return;
  const { proximal, distal, middleMm } = fragmentsOf(profile.lengthMm, patientCase.fracture);
  const { outerMm } = sectionAt(profile, middleMm);
  const width = (outerMm[0] + outerMm[1]) / 2;
  const faces = [axisAt(figures, proximal[1]), axisAt(figures, distal[0])] as const;
  const across = minus(faces[1], faces[0]);
  const open = lengthOf(across);
  const lengthMm = Math.max(open, value('healing.callus.least-length') * width);
  const way = open > 0 ? plus([0, 0, 0], across, 1 / open) : ([1, 0, 0] as const);
  const middle = plus(faces[0], across, 1 / 2);
  const ends = [PROXIMAL_FACE, DISTAL_FACE].map((face, i) => {
    const name = `${CALLUS}.${face}`;
    sink.node(name, plus(middle, way, (i - 1 / 2) * lengthMm));
    sink.rigid(`${name}.arm`, face, name);
    return name;
  });
  const round = { shape: 'round', od: value('healing.callus.width') * width } as const;
  const tissue = { name: CALLUS, E: callusYoungMPa, nu: value('healing.callus.poisson') };
  sink.member(CALLUS, ends[0]!, ends[1]!, round, tissue);
}
