/** A ranking cut down to what a record keeps: each plan's construct and its worst margin, not every figure. */
import { constructOf, LOADS, type Plan, type Ranking } from '@bonewright/construct';
import type { Payload } from './events.ts';

export type PlanSummary = Payload<'plans-ranked'>['plans'][number];

/** What a `plans-ranked` event says of a ranking. */
export function summariseRanking(ranking: Ranking): Payload<'plans-ranked'> {
  const { plans, candidates, solved, refused, nearest } = ranking;
  const said = { plans: plans.map(summarisePlan), candidates, solved, refused };
  return nearest === undefined ? said : { ...said, nearest };
}

/** A plan's construct, verdict and the margin that decides: the load whose p05 is least. */
export function summarisePlan(plan: Plan): PlanSummary {
  const { label, lastResort, verdict, holes, massG } = plan;
  return { label, lastResort, verdict, holes, massG, construct: constructOf(plan), worst: worstMargin(plan) };
}

function worstMargin(plan: Plan): PlanSummary['worst'] {
  const [first, ...others] = LOADS.map((load) => ({ load, ...plan.loads[load].margin }));
  return others.reduce((worst, margin) => (margin.p05 < worst.p05 ? margin : worst), first!);
}
