/** How much a hole weakens a long bone: the measured effective factor, and beside it the elastic one of handbooks. */
import { curve, value } from '@bonewright/evidence';

/** Holes measured, as shares of the bone's width, with the entry that holds the factor. */
const MEASURED = [
  { ratio: 0, factor: () => 1 },
  { ratio: 1 / 10, factor: () => value('bone.hole.tenth') },
  { ratio: 1 / 5, factor: () => value('bone.hole.fifth') },
  { ratio: 1 / 4, factor: () => value('bone.hole.quarter') },
] as const;

/**
 * Effective factor K_f = 1/(1 - loss) of a hole of that share of the bone's width; linear between the measured ones.
 * Past the measured range the section that is left counts as well. `share` scales what goes beyond 1.
 */
export function holeFactor(ratio: number, share = 1): number {
  const known = value('bone.hole.known-to');
  const inside = Math.min(ratio, known);
  const next = MEASURED.findIndex((m) => m.ratio >= inside);
  const i = next < 0 ? MEASURED.length - 1 : Math.max(1, next);
  const [a, b] = [MEASURED[i - 1]!, MEASURED[i]!];
  const linear = a.factor() + ((b.factor() - a.factor()) * (inside - a.ratio)) / (b.ratio - a.ratio);
  const beyond = ratio > known ? (1 - known) / Math.max(1 - ratio, 1 - known - known) : 1;
  return (1 + (linear - 1) * share) * beyond;
}

/** Weight of a hole in bending: 1 at the outermost fibre, less towards the neutral axis. */
export function neutralWeight(shareOfPeak: number): number {
  const least = value('bone.hole.neutral-weight');
  return least + (1 - least) * shareOfPeak;
}

export type HoleLoad = 'tension' | 'bending' | 'torsion';

/**
 * Elastic stress-raiser K_tg of a transverse hole through a tube, nominal stress on the gross section, in torsion the
 * normal stress beside the hole over the nominal shear. `bore` = di/D, `ratio` = d/D. Source: curve `hole.LOAD`.
 */
export function elasticHoleFactor(load: HoleLoad, bore: number, ratio: number): number {
  return curve(`hole.${load}`).terms.reduce(
    (sum, { coefficient, bore: b, ratio: r }) => sum + coefficient * bore ** b * ratio ** r,
    0,
  );
}
