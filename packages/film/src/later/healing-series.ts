/**
 * Scores of union cortex by cortex over the rechecks: RUST (Whelan 2010) and mRUST (Litrenta 2015), definitions as
 * restated on the JBJS blog. The vet types the scores; nothing here reads a film. Pure sums.
 */
import { entry } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';

/** The craniocaudal view shows the first two, the mediolateral view the others. */
export const CORTICES = ['medial', 'lateral', 'cranial', 'caudal'] as const;
export type Cortex = (typeof CORTICES)[number];
export type UnionScale = 'RUST' | 'mRUST';

/** What each score of one cortex means; the first is score 1. */
export const CORTEX_GRADES: Readonly<Record<UnionScale, readonly string[]>> = {
  RUST: ['no callus', 'callus, fracture line still seen', 'callus, no fracture line'],
  mRUST: [
    'no callus',
    'callus, not bridging',
    'bridging callus, fracture line still seen',
    'remodelled, no fracture line',
  ],
};

export interface Recheck {
  /** Days from the operation. */
  readonly day: number;
  /** Null where the cortex is not to be seen: metal, putty, obliquity. */
  readonly scores: Readonly<Record<Cortex, number | null>>;
}

export interface HealingPoint extends Recheck {
  /** Of all four cortices; null where one is not seen. */
  readonly total: number | null;
  readonly seen: number;
  /** Sum of the cortices that are seen now and were seen last time, now less then; null for the first. */
  readonly change: number | null;
  /** Cortices scored lower than at the last time they were seen. */
  readonly fell: readonly Cortex[];
}

/** A published score at union. None is for wildlife: they are shown side by side. */
export interface UnionThreshold {
  readonly species: string;
  readonly score: number;
  readonly source: string;
  readonly status: string;
  readonly evidence: string;
  /** First recheck that reaches it; null while none does. */
  readonly reachedOnDay: number | null;
}

export interface HealingSeries {
  readonly scale: UnionScale;
  readonly lowest: number;
  readonly highest: number;
  readonly points: readonly HealingPoint[];
  readonly thresholds: readonly UnionThreshold[];
  readonly remarks: readonly string[];
  /** What the scores cannot do, to be shown beside them. */
  readonly weaknesses: readonly string[];
}

const THRESHOLDS: Readonly<Record<UnionScale, readonly (readonly [species: string, id: string])[]>> = {
  RUST: [
    ['rat', 'union.rust.rat'],
    ['mouse', 'union.rust.mouse'],
    ['human', 'union.rust.human'],
  ],
  mRUST: [
    ['rat', 'union.mrust.rat'],
    ['mouse', 'healing.union.score'],
    ['human', 'union.mrust.human'],
  ],
};

/** Sums the rechecks in the order of their days. Throws InputError for a score off its scale and for two on one day. */
export function healingSeries(scale: UnionScale, rechecks: readonly Recheck[]): HealingSeries {
  const grades = CORTEX_GRADES[scale].length;
  for (const [i, r] of rechecks.entries()) checkRecheck(r, i, scale, grades);
  const ordered = rechecks.toSorted((a, b) => a.day - b.day);
  const twice = ordered.find((r, i) => r.day === ordered[i - 1]?.day);
  if (twice) throw new InputError(`two rechecks on day ${twice.day}`, 'rechecks', 'keep one score a day');
  const points = ordered.map((r, i) => pointOf(r, ordered.slice(0, i)));
  return {
    scale,
    lowest: CORTICES.length,
    highest: CORTICES.length * grades,
    points,
    thresholds: THRESHOLDS[scale].map((t) => thresholdOf(t, points)),
    remarks: remarksOf(scale, points),
    weaknesses: weaknessesOf(scale),
  };
}

/** The RUST that a cortex scored on mRUST would have: callus with the line still seen is one grade there. */
export const rustOf = (mrust: number): number => (mrust <= 2 ? mrust : mrust - 1);

function checkRecheck({ day, scores }: Recheck, i: number, scale: UnionScale, grades: number): void {
  if (!Number.isFinite(day) || day < 0)
    throw new InputError(`a recheck on day ${day}`, `rechecks[${i}].day`, 'give days from the operation');
  for (const cortex of CORTICES) {
    const score = scores[cortex];
    if (score !== null && !(Number.isInteger(score) && score >= 1 && score <= grades))
      throw new InputError(
        `${score} is no ${scale} score of a cortex`,
        `rechecks[${i}].scores.${cortex}`,
        `give a whole number from 1 to ${grades}, or null where it is not seen`,
      );
  }
}

function pointOf(recheck: Recheck, earlier: readonly Recheck[]): HealingPoint {
  const { scores } = recheck;
  const seen = CORTICES.filter((c) => scores[c] !== null);
  const last = earlier.at(-1);
  const both = last ? seen.filter((c) => last.scores[c] !== null) : [];
  const sum = (of: readonly Cortex[], from: Recheck) => of.reduce((t, c) => t + from.scores[c]!, 0);
  const fell = seen.filter((c) => {
    const before = earlier.findLast((r) => r.scores[c] !== null);
    return before !== undefined && scores[c]! < before.scores[c]!;
  });
  return {
    ...recheck,
    total: seen.length === CORTICES.length ? sum(seen, recheck) : null,
    seen: seen.length,
    change: last && both.length > 0 ? sum(both, recheck) - sum(both, last) : null,
    fell,
  };
}

function thresholdOf([species, id]: readonly [string, string], points: readonly HealingPoint[]): UnionThreshold {
  const { value, source, status } = entry(id);
  const reached = points.find((p) => p.total !== null && p.total >= value);
  const title = source.year === undefined ? source.title : `${source.title}, ${source.year}`;
  return { species, score: value, source: title, status, evidence: id, reachedOnDay: reached?.day ?? null };
}

function remarksOf(scale: UnionScale, points: readonly HealingPoint[]): string[] {
  const fallen = points.flatMap((p) =>
    p.fell.map((c) => `day ${p.day}: the ${c} cortex is scored lower than before; bone seldom goes back, look again`),
  );
  const hidden = points.filter((p) => p.total === null);
  const missing = hidden.map(
    (p) => `day ${p.day}: ${p.seen} of ${CORTICES.length} cortices seen, no total: no threshold applies`,
  );
  const last = points.at(-1);
  const rust = last && last.total !== null ? rustTotal(scale, last) : null;
  const warning = entry('union.rust.warning');
  const low =
    last && rust !== null && rust < warning.value
      ? [`day ${last.day}: RUST ${rust}, below ${warning.value} (${warning.appliesTo}): early on this says nothing yet`]
      : [];
  return [...fallen, ...missing, ...low];
}

const rustTotal = (scale: UnionScale, { scores }: Recheck): number =>
  CORTICES.reduce((t, c) => t + (scale === 'RUST' ? scores[c]! : rustOf(scores[c]!)), 0);

function weaknessesOf(scale: UnionScale): string[] {
  const agreement = entry(scale === 'RUST' ? 'union.rust.agreement' : 'union.mrust.agreement');
  return [
    `readers agree only in part (intraclass correlation: ${agreement.appliesTo})`,
    'thresholds come from humans, rats and mice; none is published for hedgehogs, squirrels, wild rabbits or birds',
    'films lag behind strength, and frames and putty hide cortices: the score never decides by itself that a frame comes off',
    'birds heal largely from within and callus is hard to see on film: little callus does not mean little union (Hall 2013, Avian orthopedics, AAZV; seen)',
  ];
}
