/** The search of a drawer with this package's own mechanics, or with others for a trial. */
import type { Case } from '../model/case-file.ts';
import type { Ranking } from '../model/plan.ts';
import { MECHANICS } from './mechanics.ts';
import { type RankOptions, rankWith } from './rank.ts';

/**
 * Up to four plans from the drawer that differ in kind, best first; seeded by the case. Where margins stop all of them
 * they are last resorts; where checks stop all, `plans` is empty and `nearest` says what is missing.
 */
export const rank = (patientCase: Case, options: RankOptions = {}): Ranking =>
  rankWith(MECHANICS, patientCase, options);

export type { Evaluators } from './evaluators.ts';
export { type RankOptions, rankWith } from './rank.ts';
