/** Which of the candidates are worth solving: a few of each kind, so that every kind can be offered. */
import { value } from '@bonewright/evidence';
import type { Construct } from '../model/case-file.ts';
import type { Candidate } from './candidates.ts';

/**
 * Of each IM pin with each number of pins the most promising, the lightest that promises nearly as much, and, for the
 * most promising of each number of pins with an IM pin, the same with that pin left free.
 */
export function shortlist(passed: readonly Candidate[]): Construct[] {
  const groups = grouped(passed, ({ construct: { im, pins } }) => JSON.stringify([im, pins.length]));
  const picked = groups.flatMap((group) => {
    const best = mostPromising(group);
    const near = group.filter(({ promise }) => promise >= value('plan.lighter.margin-kept') * best.promise);
    const lightest = near.reduce((a, b) => (b.massG < a.massG ? b : a));
    return lightest === best ? [best] : [best, lightest];
  });
  const withIm = picked.filter(({ construct }) => construct.im);
  const free = grouped(withIm, ({ construct }) => String(construct.pins.length)).map((group) => {
    const { construct } = mostPromising(group);
    return { ...construct, im: construct.im && { ...construct.im, tiedIn: false } };
  });
  return [...picked.map(({ construct }) => construct), ...free];
}

const mostPromising = (group: readonly Candidate[]): Candidate =>
  group.reduce((a, b) => (b.promise > a.promise ? b : a));

function grouped(candidates: readonly Candidate[], keyOf: (candidate: Candidate) => string): Candidate[][] {
  const groups = new Map<string, Candidate[]>();
  for (const candidate of candidates) {
    const key = keyOf(candidate);
    groups.set(key, [...(groups.get(key) ?? []), candidate]);
  }
  return [...groups.values()];
}
