/**
 * Finds better places for the pins that are not in yet, the others held where they stand. One pin at a time over every
 * place of its fragment, until none gains; a stop that a placed pin brought stays, none may be added to it.
 */
import { value } from '@bonewright/evidence';
import type { Case, Construct } from '../model/case-file.ts';
import type { Plan } from '../model/plan.ts';
import type { Evaluators } from '../search/evaluators.ts';
import { spacingOf } from '../search/layouts.ts';
import { type SiteBook, siteBook } from '../search/sites.ts';
import { middleWorth } from '../search/worth.ts';
import { withPinAt } from '../what-if/edits.ts';

/** What a re-planning may move, and where it may not go. Indices count from 0 in the construct. */
export interface Freedom {
  readonly free: readonly number[];
  readonly shunned: readonly { readonly index: number; readonly sMm: number }[];
}

export interface Tried {
  readonly construct: Construct;
  readonly plan: Plan;
}

/** Twice round all free pins settles what a first move upset. */
const ROUNDS = 2;

/** The best construct that the moves reach from `start`. */
export function rePlanned(
  nominal: Evaluators['nominal'],
  patientCase: Case,
  start: Construct,
  freedom: Freedom,
): Tried {
  const books = new Map<number, SiteBook>();
  const bookFor = (aboutDeg: number): SiteBook => {
    const book = books.get(aboutDeg) ?? siteBook(patientCase, aboutDeg);
    books.set(aboutDeg, book);
    return book;
  };
  let best: Tried = { construct: start, plan: nominal(patientCase, start) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = best;
    for (const index of freedom.free) {
      const { construct } = best;
      for (const sMm of placesFor(patientCase, construct, index, freedom, bookFor)) {
        const next = withPinAt(construct, index, sMm);
        const tried = { construct: next, plan: nominal(patientCase, next) };
        if (isBetter(tried.plan, best.plan)) best = tried;
      }
    }
    if (best === before) break;
  }
  return best;
}

/** Fewer stops, or no more of them and a gain that is worth naming. */
function isBetter(plan: Plan, best: Plan): boolean {
  const more = stopsIn(plan) - stopsIn(best);
  if (more !== 0) return more < 0;
  return middleWorth(plan) > middleWorth(best) * (1 + value('what-if.least-gain') / 100);
}

const stopsIn = ({ checks }: Plan): number => checks.filter(({ verdict }) => verdict === 'stop').length;

/** Places of the pin's own fragment that keep their distance to the other pins and to where it would not go. */
export function placesFor(
  patientCase: Case,
  construct: Construct,
  index: number,
  { shunned }: Pick<Freedom, 'shunned'>,
  bookFor: (aboutDeg: number) => SiteBook,
): number[] {
  const { drawerId, aboutDeg, sMm: now } = construct.pins[index]!;
  const { fromMm, toMm } = patientCase.fracture;
  const fragment = now < (fromMm + toMm) / 2 ? 'proximal' : 'distal';
  const spacing = spacingOf(patientCase, drawerId);
  const taken = [
    ...construct.pins.filter((_, i) => i !== index).map(({ sMm }) => sMm),
    ...shunned.filter((hole) => hole.index === index).map(({ sMm }) => sMm),
  ];
  return bookFor(aboutDeg)(drawerId, construct.im ?? null)
    .allowed[fragment].filter(
      ({ sMm, boneWidthMm }) => sMm !== now && taken.every((other) => Math.abs(other - sMm) >= spacing(boneWidthMm)),
    )
    .map(({ sMm }) => sMm);
}
