/** What makes one plan better than another, in one figure. */
import { value } from '@bonewright/evidence';
import { type Check, LOADS, type Margin, type Plan } from '../model/plan.ts';

/** The margin that decides, over all loads: the one that 5 of 100 trials fall furthest below. */
export const leastMargin = ({ loads }: Plan): Margin =>
  LOADS.map((load) => loads[load].margin).reduce((a, b) => (b.p05 < a.p05 ? b : a));

/** What 5 of 100 trials fall below under the load that decides. */
export const worstMargin = (plan: Plan): number => leastMargin(plan).p05;

/** Kinds of check that ask for care; the same worry about three pins is one worry. */
export const watchesIn = (checks: readonly Check[]): Set<string> =>
  new Set(checks.filter(({ verdict }) => verdict === 'watch').map(({ id }) => id));

/**
 * A p05 margin, more than enough counting as enough, with what each kind of watch and each pin costs taken off. A margin
 * at watch is one watch more; one at stop loses a share of its own.
 */
export function worth(p05: number, watchKinds: number, pins: number): number {
  const enough = Math.min(p05, value('plan.margin.enough'));
  const watches = watchKinds + (p05 < value('margin.watch') ? 1 : 0);
  const failing = p05 < value('margin.stop') ? value('plan.stop.cost') : 0;
  return enough * (1 - failing) * (1 - value('plan.watch.cost')) ** watches * (1 - value('plan.pin.cost')) ** pins;
}

export const worthOf = (plan: Plan): number => worth(worstMargin(plan), watchesIn(plan.checks).size, plan.pins.length);

/** As `worthOf`, for a plan at middle values: its margins are taken to spread as they usually do. */
export const middleWorth = (plan: Plan): number =>
  worth(worstMargin(plan) / value('plan.spread.usual'), watchesIn(plan.checks).size, plan.pins.length);
