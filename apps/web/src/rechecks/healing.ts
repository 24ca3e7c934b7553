/** The frame's share of the load at each visit and what taking it down would leave, by the healing model. */
import { type CaseState, caseFileOf } from '@bonewright/casebook';
import { type Case, type Construct, frameShare, type Healing, type Stage, takeDown } from '@bonewright/construct';
import type { HealingPoint } from '@bonewright/film';
import { inTheatreOf } from '../theatre/in-theatre.ts';

export interface VisitShare {
  readonly day: number;
  /** By the weeks alone. */
  readonly byWeeks: number;
  /** By the film's score; null where it has none on the model's scale. */
  readonly byScore: number | null;
}

export interface HealingModel {
  readonly patientCase: Case;
  readonly shares: readonly VisitShare[];
  /** At the last visit, by its score where it has one. */
  readonly stages: readonly Stage[];
  readonly lastDay: number;
  readonly isByScore: boolean;
}

const DAYS_PER_WEEK = 7;

/** Null without a plan, or before any visit. `scored` are mRUST: the model reads no other scale. */
export function healingModel(
  state: CaseState,
  days: readonly number[],
  scored: readonly HealingPoint[],
): HealingModel | null {
  const { caseFile } = caseFileOf(state);
  const lastDay = days.at(-1);
  const construct = caseFile?.construct && asItStands(state, caseFile.construct);
  if (!caseFile || !construct || lastDay === undefined) return null;
  const scoreOn = (day: number) => scored.find((point) => point.day === day)?.total ?? null;
  const at = (day: number): Healing => ({ weeks: day / DAYS_PER_WEEK });
  const shareAt = (healing: Healing) => frameShare(caseFile, construct, healing);
  const shares = days.map((day): VisitShare => {
    const score = scoreOn(day);
    return {
      day,
      byWeeks: shareAt(at(day)),
      byScore: score === null ? null : shareAt({ ...at(day), score }),
    };
  });
  const score = scoreOn(lastDay);
  const stages = takeDown(caseFile, construct, score === null ? at(lastDay) : { ...at(lastDay), score });
  return { patientCase: caseFile, shares, stages, lastDay, isByScore: score !== null };
}

/** The plan with every pin where theatre wrote it down, and without those left out. */
function asItStands(state: CaseState, construct: Construct): Construct {
  const { placed, leftOut } = inTheatreOf(state, construct.pins.length);
  const pins = construct.pins.flatMap((pin, i) => {
    if (leftOut.includes(i + 1)) return [];
    const { pin: _, ...there } = placed.find((each) => each.pin === i + 1) ?? { pin: 0 };
    return [{ ...pin, ...there }];
  });
  return pins.length === 0 ? construct : { ...construct, pins };
}
