/** A figure against its limits: what it is called, and the words for the limit it crossed. A limit itself still passes. */
import type { Check, Verdict } from '../model/plan.ts';

export interface Limits {
  /** `above`: larger is worse. `below`: smaller is worse. */
  readonly worse: 'above' | 'below';
  readonly watch: number | null;
  readonly stop: number | null;
}

/** Figures that come from adding tenths of a millimetre must not fail by their last bit. */
const ROUNDING = 1e-9;

function crosses(value: number, limit: number | null, worse: Limits['worse']): boolean {
  if (limit === null) return false;
  return worse === 'above' ? value > limit + ROUNDING : value < limit - ROUNDING;
}

/** Monotone: a worse value never has a better verdict. */
export function verdictOf(value: number, { worse, watch, stop }: Limits): Verdict {
  if (crosses(value, stop, worse)) return 'stop';
  return crosses(value, watch, worse) ? 'watch' : 'good';
}

/** ` (watch over 25 %)`, ` (stop under 2.0 mm)`; empty where nothing was crossed, and for a limit of nothing at all. */
function crossedWords(verdict: Verdict, limits: Limits, shown: (value: number) => string): string {
  const limit = verdict === 'good' ? null : limits[verdict];
  if (!limit) return '';
  return ` (${verdict} ${limits.worse === 'above' ? 'over' : 'under'} ${shown(limit)})`;
}

export interface Finding {
  readonly id: string;
  readonly value: number;
  readonly unit: string;
  readonly limits: Limits;
  /** How a figure of this kind is written: `26 %`, `5.1 mm`. */
  readonly shown: (value: number) => string;
  /** The sentence up to the limit's brackets, without a full stop. */
  readonly says: string;
  /** Said after it where the verdict is not good: what to do. */
  readonly advice?: string;
  readonly evidence: readonly string[];
  readonly pin?: number;
}

/** The check that a finding makes. */
export function judged(finding: Finding): Check {
  const { id, value, unit, limits, shown, says, advice, evidence, pin } = finding;
  const verdict = verdictOf(value, limits);
  const rest = verdict !== 'good' && advice ? ` ${advice}` : '';
  const because = `${says}${crossedWords(verdict, limits, shown)}.${rest}`;
  const { watch, stop } = limits;
  return { id, value, unit, watch, stop, verdict, because, evidence, ...(pin === undefined ? {} : { pin }) };
}

/** A check whose figure could not be had; the sentence says why. */
export function unmeasured(
  id: string,
  unit: string,
  verdict: Verdict,
  because: string,
  evidence: readonly string[],
  pin?: number,
): Check {
  const figures = { id, value: null, unit, watch: null, stop: null, verdict, because, evidence };
  return pin === undefined ? figures : { ...figures, pin };
}
