/** How stiff the tissue in the gap is, from the weeks that have passed or from what the films show. */
import { value } from '@bonewright/evidence';
import { unionWeeks } from '../loads/demand.ts';
import type { Case } from '../model/case-file.ts';

/** Weeks since the repair, and the score of four cortices (mRUST, 4 to 16) where films were scored: they go first. */
export interface Healing {
  readonly weeks: number;
  readonly score?: number | undefined;
}

const DAYS_PER_WEEK = 7;

/** Modulus of the callus in MPa: straight in its logarithm from the first days to union, level after. */
export function callusModulus(patientCase: Case, healing: Healing): number {
  const done = Math.min(1, Math.max(0, progress(patientCase, healing)));
  return value('healing.callus.first-modulus') ** (1 - done) * value('healing.callus.union-modulus') ** done;
}

/** 0 at the start, 1 at union. */
function progress(patientCase: Case, { weeks, score }: Healing): number {
  if (score !== undefined) {
    const none = value('healing.union.score-none');
    return (score - none) / (value('healing.union.score') - none);
  }
  const start = value('healing.callus.first-day') / DAYS_PER_WEEK;
  return (weeks - start) / (unionWeeks(patientCase) - start);
}
