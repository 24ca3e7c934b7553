/** Which of the solved constructs are offered: up to four that differ in kind, and what each is called. */
import { value } from '@bonewright/evidence';
import type { Plan } from '../model/plan.ts';
import { type PinsWay, pinsWay } from './other-ways.ts';
import type { Solved } from './solve.ts';
import { worstMargin, worthOf } from './worth.ts';

/** More than a surgeon compares at a glance is no help. */
export const MOST_OFFERED = 4;

const IM_KINDS = ['none', 'tied in', 'left free'] as const;
type ImKind = (typeof IM_KINDS)[number];
const imKind = ({ im }: Plan): ImKind => (im ? (im.tiedIn ? 'tied in' : 'left free') : 'none');

/**
 * The best all round, the best of each other way with the IM pin, fewer holes, less mass, the strongest: those that
 * differ in kind, in that order. Some may yet fall when their margins are known with their spread.
 */
export function differentKinds(solved: readonly Solved[]): Solved[] {
  const first = best(solved, (s) => s.worth);
  if (!first) return [];
  const kept = value('plan.lighter.margin-kept') * worstMargin(first.plan);
  const strong = solved.filter((s) => worstMargin(s.plan) >= kept);
  const ways = IM_KINDS.filter((kind) => kind !== imKind(first.plan)).map((kind) => bestOfKind(solved, strong, kind));
  const wanted = [
    first,
    ways[0],
    leastOf(strong, (s) => s.plan.holes),
    leastOf(strong, (s) => s.plan.massG),
    ways[1],
    best(strong, (s) => worstMargin(s.plan)),
  ];
  const chosen: Solved[] = [];
  for (const next of wanted) {
    if (next && chosen.every((other) => differInKind(next.plan, other.plan))) chosen.push(next);
  }
  return chosen;
}

/** The worthiest that is strong enough, else the strongest there is: a surgeon without that IM pin wants to see it. */
function bestOfKind(solved: readonly Solved[], strong: readonly Solved[], kind: ImKind): Solved | undefined {
  const isKind = (s: Solved) => imKind(s.plan) === kind;
  return best(strong.filter(isKind), (s) => s.worth) ?? best(solved.filter(isKind), (s) => worstMargin(s.plan));
}

/** Another way with the IM pin or the pins, two pins more or less, or clearly less mass. */
export function differInKind(a: Plan, b: Plan): boolean {
  if (imKind(a) !== imKind(b) || pinsWay(a) !== pinsWay(b) || Math.abs(a.pins.length - b.pins.length) >= 2) return true;
  const lighter = Math.min(a.massG, b.massG) / Math.max(a.massG, b.massG);
  return lighter < value('plan.lighter.mass-share');
}

const best = <T>(list: readonly T[], score: (item: T) => number): T | undefined =>
  list.reduce<T | undefined>((a, b) => (a === undefined || score(b) > score(a) ? b : a), undefined);

/** Least by that figure, and the worthiest of those that share it. */
function leastOf(list: readonly Solved[], figure: (s: Solved) => number): Solved | undefined {
  const least = Math.min(...list.map(figure));
  return best(
    list.filter((s) => figure(s) <= least * (1 + SAME)),
    (s) => s.worth,
  );
}

/** Masses this close are the same to a patient. */
const SAME = 0.02;

/**
 * Best first, each called by how it differs. Plans whose margins stop are left out while any other remains;
 * where all stop they are last resorts.
 */
export function ordered(plans: readonly Plan[]): Plan[] {
  const holding = plans.filter(({ verdict }) => verdict !== 'stop');
  const lastResort = holding.length === 0;
  const sorted = (lastResort ? plans : holding).toSorted((a, b) => worthOf(b) - worthOf(a)).slice(0, MOST_OFFERED);
  return sorted.map((plan, i) => ({ ...plan, label: labelOf(plan, i, sorted), lastResort }));
}

/** No two are called the same: each name is held by one plan at most, and what a plan is made of tells the rest apart. */
function labelOf(plan: Plan, place: number, among: readonly Plan[]): string {
  const first = place === 0 ? 'best all round' : undefined;
  return namesOf(plan, among)[0] ?? first ?? partsOf(plan);
}

function namesOf(plan: Plan, among: readonly Plan[]): string[] {
  const others = among.filter((other) => other !== plan);
  const kind = imKind(plan);
  const isOnlyOne = others.every((other) => imKind(other) !== kind);
  const way = pinsWay(plan);
  return [
    others.every((other) => worstMargin(plan) > SURER * worstMargin(other)) ? 'surest' : '',
    others.every(({ holes }) => plan.holes < holes) ? 'fewest holes' : '',
    others.every(({ massG }) => plan.massG < massG) ? 'lightest' : '',
    others.every((other) => pinsWay(other) !== way) ? WAY_NAMES[way] : '',
    isOnlyOne ? KIND_NAMES[kind] : '',
  ].filter((name) => name !== '');
}

/** Less than this times another's margin is not surer: nobody should choose by it. */
const SURER = 1.03;

/** Square pins are the usual ones. */
const WAY_NAMES: Readonly<Record<PinsWay, string>> = {
  square: '',
  opposed: 'pins opposed',
  'two planes': 'pins in two planes',
};

const KIND_NAMES: Readonly<Record<ImKind, string>> = {
  none: 'no IM pin',
  'left free': 'IM pin left free',
  'tied in': 'IM pin tied in',
};

/** `6 pins, IM pin tied in`: where nothing sets it apart but what it is made of. */
function partsOf(plan: Plan): string {
  const kind = imKind(plan);
  const way = WAY_NAMES[pinsWay(plan)].replace('pins', '');
  return `${plan.pins.length} pins${way}, ${kind === 'none' ? 'no IM pin' : `IM pin ${kind}`}`;
}
