/** The bone cut at the pin that leaves the IM pin least room, or without one at the pin widest for its bone. */
import { sectionAt, widthAcross } from '@bonewright/bone';
import type { Case, Construct } from '../model/case-file.ts';
import { type Figures, nominalFigures } from '../model/figures.ts';
import type { SectionFigure } from './view-figure.ts';

/** The section worth seeing; null for a construct without pins. The case and construct must have been checked. */
export function sectionFigure(patientCase: Case, construct: Construct): SectionFigure | null {
  const figures = nominalFigures(patientCase, construct);
  const sections = construct.pins.map((pin, i) => sectionAtPin(figures, pin, i));
  return sections.toSorted((a, b) => tightness(b) - tightness(a))[0] ?? null;
}

const tightness = ({ im, pinDiameterMm, outerMm, aboutDeg }: SectionFigure): number =>
  im ? -im.roomMm : pinDiameterMm / widthAcross({ outerMm, canalMm: [0, 0] }, aboutDeg);

function sectionAtPin(figures: Figures, { sMm, aboutDeg }: Construct['pins'][number], i: number): SectionFigure {
  const { outerMm, canalMm } = sectionAt(figures.profile, sMm);
  const pinDiameterMm = figures.pins[i]!.diameterMm;
  const isMeasured = figures.profile.canalBasis !== 'usual bore of the class';
  const im = figures.im ? imBeside(figures.im.diameterMm, canalMm, pinDiameterMm, aboutDeg) : null;
  return { pin: i + 1, sMm, outerMm, canalMm: isMeasured ? canalMm : null, pinDiameterMm, aboutDeg, im };
}

/** The pin goes through the middle of the canal; the IM pin lies beside it, against it, on the cranial side where it can. */
function imBeside(
  diameterMm: number,
  canalMm: readonly [number, number],
  pinDiameterMm: number,
  aboutDeg: number,
): NonNullable<SectionFigure['im']> {
  const half = widthAcross({ outerMm: canalMm, canalMm: [0, 0] }, aboutDeg) / 2;
  const off = (pinDiameterMm + diameterMm) / 2;
  const angle = ((aboutDeg + 90) * Math.PI) / 180;
  const sense = Math.sin(angle) >= 0 ? 1 : -1;
  return {
    diameterMm,
    centre: [sense * off * Math.cos(angle), sense * off * Math.sin(angle)],
    roomMm: half - pinDiameterMm / 2 - diameterMm,
  };
}
