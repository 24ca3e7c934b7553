/**
 * The kept unknowns as one set of supports leaves them. Those that no contact or sleeve measures are eliminated here;
 * what is left is Newton's: a condensed stiffness and the rows of contacts and sleeves.
 */

import { ROW } from '../assemble/deformations.ts';
import type { Memory } from './memory.ts';
import type { Program } from './program.ts';
import type { Judge } from './reference-kernel.ts';
import { eliminateSquare } from './square.ts';

/** A stiffness, factored. */
export interface Tangent {
  readonly n: number;
  readonly values: Float64Array;
  readonly inverse: Float64Array;
}

export interface HeldInterface {
  /** Unknowns left free: first those that are eliminated here, then those that contacts and sleeves measure. */
  readonly unknowns: Int32Array;
  readonly eliminated: number;
  /** The stiffness of all, its first rows eliminated. */
  readonly whole: Tangent;
  readonly wholeDiagonal: Float64Array;
  /** For Newton: condensed stiffness (upper triangle), diagonal before condensation, rows of contacts and sleeves. */
  readonly block: Float64Array;
  readonly diagonal: Float64Array;
  readonly gapRows: Float64Array;
  /** For each row the first unknown in it: a factor stays good up to there when the row begins to bear. */
  readonly firstOf: Int32Array;
  /** The block's own factor, while nothing bears; what moves freely then, and the unknown that showed it. */
  readonly open: Tangent;
  openMotion: Float64Array | null;
  openFreeAt: number;
  isFactored: boolean;
}

/**
 * Room for one support set that holds `heldSlots` (6 a body) besides what all sets hold. What contacts measure comes
 * last: they shut more often than sleeves bear, and a change costs the less the later it is.
 */
export function holdInterface(
  program: Program,
  heldSlots: Int32Array,
  rowUnknowns: Int32Array,
  contacts: number,
): HeldInterface {
  const rows = rowUnknowns.length / ROW;
  const held = new Set(Array.from(heldSlots, (slot) => program.unknownOf[slot]!));
  const measured = new Set(rowUnknowns);
  const byContact = new Set(rowUnknowns.subarray(0, contacts * ROW));
  const first: number[] = [];
  const sleeved: number[] = [];
  const touched: number[] = [];
  const firstLate = program.interior + program.hidden + program.gaps;
  for (let unknown = program.interior + program.hidden; unknown < program.unknowns; unknown++) {
    if (held.has(unknown)) continue;
    if (byContact.has(unknown)) touched.push(unknown);
    else (unknown < firstLate || measured.has(unknown) ? sleeved : first).push(unknown);
  }
  const m = sleeved.length + touched.length;
  const n = first.length + m;
  const square = (size: number): Tangent => ({
    n: size,
    values: new Float64Array(size * size),
    inverse: new Float64Array(size),
  });
  return {
    unknowns: Int32Array.from([...first, ...sleeved, ...touched]),
    eliminated: first.length,
    whole: square(n),
    wholeDiagonal: new Float64Array(n),
    block: new Float64Array(m * m),
    diagonal: new Float64Array(m),
    gapRows: new Float64Array(rows * m),
    firstOf: new Int32Array(rows),
    open: square(m),
    openMotion: null,
    openFreeAt: n,
    isFactored: false,
  };
}

/** Takes over the interface block that the elimination left; suspect pivots are given to `judge`. */
export function refreshBlock(held: HeldInterface, program: Program, memory: Memory, judge: Judge): void {
  const { unknowns, eliminated, whole, wholeDiagonal, block, diagonal } = held;
  const { n, values, inverse } = whole;
  const width = program.unknowns - program.interior;
  for (let i = 0; i < n; i++) {
    for (let j = i; j < n; j++) {
      const a = unknowns[i]! - program.interior;
      const b = unknowns[j]! - program.interior;
      values[i * n + j] = memory.values[program.interfaceAt + (a < b ? a * width + b : b * width + a)]!;
    }
    wholeDiagonal[i] = memory.diagonal[unknowns[i]!]!;
  }
  eliminateSquare(values, n, 0, eliminated, wholeDiagonal, inverse, judge);
  const m = n - eliminated;
  for (let i = 0; i < m; i++) {
    diagonal[i] = wholeDiagonal[eliminated + i]!;
    for (let j = i; j < m; j++) block[i * m + j] = values[(eliminated + i) * n + eliminated + j]!;
  }
  held.isFactored = false;
}

/** Takes the rows of contacts and sleeves over the kept unknowns. */
export function refreshGaps(held: HeldInterface, program: Program, rows: Float64Array): void {
  const { unknowns, eliminated, gapRows, firstOf } = held;
  const firstKept = program.interior + program.hidden;
  const kept = program.unknowns - firstKept;
  const m = unknowns.length - eliminated;
  for (let row = 0; row < firstOf.length; row++) {
    firstOf[row] = m;
    for (let i = m - 1; i >= 0; i--) {
      const value = rows[row * kept + unknowns[eliminated + i]! - firstKept]!;
      gapRows[row * m + i] = value;
      if (value !== 0) firstOf[row] = i;
    }
  }
}
