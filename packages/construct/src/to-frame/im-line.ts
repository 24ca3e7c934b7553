/** Where an IM pin lies: in through the proximal end, straight along the canal, its tip in the distal spongy bone. */
import { canalLine, sectionAt } from '@bonewright/bone';
import type { Case } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';

/** Where the IM pin ends in the spongy bone of the distal end: halfway into its keep-out. */
export function imTipMm({ bone, keepOut }: Case, { profile }: Figures): number {
  const spongy = keepOut?.distalMm || Math.max(...sectionAt(profile, bone.lengthMm).outerMm);
  return Math.max(bone.lengthMm - spongy / 2, bone.lengthMm / 2);
}

/** The straight line that an IM pin lies on, from the bone's proximal end to its tip. */
export const imLine = (patientCase: Case, figures: Figures) =>
  canalLine(figures.profile, 0, imTipMm(patientCase, figures));
