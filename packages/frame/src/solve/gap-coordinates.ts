/**
 * Openings as unknowns. Bodies that contacts and sleeves tie form clusters; in each, as many of its motions as it has
 * rows are replaced by what the rows measure, so that Newton's method has only those to work on and everything else is
 * eliminated once. The change is a list of column operations: `to` takes `factor` times `from`, or (where both are the
 * same) is scaled, or (factor 0) the two change places.
 */
import { ROW } from '../assemble/deformations.ts';
import { type Cluster, DEPENDENT } from './clusters.ts';
import type { Memory } from './memory.ts';
import type { Program } from './program.ts';

/** A motion meant to be measured is replaced if its coefficient is at least this share of the largest. */
const GOOD_ENOUGH = 0.1;

export interface GapCoordinates {
  /** Takes the rows (12 motions each) as they are now. */
  refresh(rows: Float64Array): void;
  /** Each row over the kept unknowns (gaps, then late ones). */
  readonly rows: Float64Array;
  /** Changes the interface's block and diagonal from motions to coordinates. */
  changeBlock(memory: Memory): void;
  /** Loads on the motions to loads on the coordinates, in every column. */
  changeLoads(x: Float64Array, columns: number): void;
  /** Coordinates back to motions. */
  restoreMotions(x: Float64Array, columns: number): void;
}

/** @param rowUnknowns 12 a row: the unknowns of its motions */
export function gapCoordinates(
  program: Program,
  clusters: readonly Cluster[],
  rowUnknowns: Int32Array,
): GapCoordinates {
  const { interior, hidden, unknowns } = program;
  const width = unknowns - interior;
  const kept = width - hidden;
  const rowCount = rowUnknowns.length / ROW;
  const rows = new Float64Array(rowCount * kept);
  const wide = new Float64Array(rowCount * width);
  const row = new Float64Array(width);
  const isMeasured = new Uint8Array(width);
  const parts = clusters.map(({ rows: mine, slots, rank }) => ({
    mine,
    /** Places of the cluster's motions in the interface, those meant to be measured first. */
    at: Int32Array.from(slots, (slot) => program.unknownOf[slot]! - interior),
    rank,
  }));
  const most = parts.reduce((sum, { at, rank }) => sum + rank * (at.length + 1), 0);
  const from = new Int32Array(most);
  const to = new Int32Array(most);
  const factor = new Float64Array(most);
  let count = 0;

  function add(a: number, b: number, m: number): void {
    from[count] = a;
    to[count] = b;
    factor[count] = m;
    count += 1;
  }

  /** One operation on two lines of the block at once, their numbers `stride` apart. */
  function operateLine(x: Float64Array, a: number, b: number, stride: number, m: number): void {
    const end = width * stride;
    if (m === 0) for (let i = 0; i < end; i += stride) exchange(x, a + i, b + i);
    else if (a === b) for (let i = 0; i < end; i += stride) x[b + i]! *= m;
    else for (let i = 0; i < end; i += stride) x[b + i]! += m * x[a + i]!;
  }

  /** Operations first...last on one line of numbers, `stride` apart from `start` on. */
  function operate(x: Float64Array, start: number, stride: number, first: number, last: number): void {
    for (let i = first; i < last; i++) {
      const a = start + from[i]! * stride;
      const b = start + to[i]! * stride;
      const m = factor[i]!;
      if (m === 0) exchange(x, a, b);
      else if (a === b) x[b]! *= m;
      else x[b]! += m * x[a]!;
    }
  }

  function refresh(twelve: Float64Array): void {
    wide.fill(0);
    for (let i = 0; i < rowUnknowns.length; i++) {
      const unknown = rowUnknowns[i]!;
      if (unknown < interior || unknown === unknowns) continue;
      wide[Math.floor(i / ROW) * width + unknown - interior]! += twelve[i]!;
    }
    isMeasured.fill(0);
    count = 0;
    for (const { mine, at, rank } of parts) measure(mine, at, rank);
    for (let r = 0; r < rowCount; r++) {
      operate(wide, r * width, 1, 0, count);
      for (let i = 0; i < kept; i++) rows[r * kept + i] = wide[r * width + hidden + i]!;
    }
  }

  /** Adds the operations that make the amounts of a cluster's rows its coordinates. */
  function measure(mine: readonly number[], at: Int32Array, rank: number): void {
    const first = count;
    let measured = 0;
    for (let r = 0; r < mine.length && measured < rank; r++) {
      let scale = 0;
      for (let i = 0; i < at.length; i++) {
        row[at[i]!] = wide[mine[r]! * width + at[i]!]!;
        scale = Math.max(scale, Math.abs(row[at[i]!]!));
      }
      operate(row, 0, 1, first, count);
      const pivot = choosePivot(at, rank);
      if (pivot < 0 || Math.abs(row[pivot]!) <= DEPENDENT * scale) continue;
      const size = row[pivot]!;
      for (let i = 0; i < at.length; i++) {
        if (at[i] !== pivot && row[at[i]!] !== 0) add(pivot, at[i]!, -row[at[i]!]! / size);
      }
      if (size !== 1) add(pivot, pivot, 1 / size);
      isMeasured[pivot] = 1;
      measured += 1;
    }
    for (let i = rank, free = 0; i < at.length; i++) {
      if (isMeasured[at[i]!] === 0) continue;
      while (isMeasured[at[free]!] === 1) free += 1;
      add(at[i]!, at[free]!, 0);
      isMeasured[at[free]!] = 1;
    }
  }

  /** The motion to replace: one that is meant for it if its coefficient will do, else the one with the largest. */
  function choosePivot(at: Int32Array, rank: number): number {
    const wanted = largestAt(at, 0, rank);
    const other = largestAt(at, rank, at.length);
    if (wanted < 0 || other < 0) return Math.max(wanted, other);
    return Math.abs(row[wanted]!) >= GOOD_ENOUGH * Math.abs(row[other]!) ? wanted : other;
  }

  function largestAt(at: Int32Array, first: number, last: number): number {
    let best = -1;
    for (let i = first; i < last; i++) {
      if (isMeasured[at[i]!] === 1) continue;
      if (best < 0 || Math.abs(row[at[i]!]!) > Math.abs(row[best]!)) best = at[i]!;
    }
    return best;
  }

  function changeBlock({ values, diagonal }: Memory): void {
    if (count === 0) return;
    const base = program.interfaceAt;
    for (let i = 0; i < width; i++) {
      for (let j = 0; j < i; j++) values[base + i * width + j] = values[base + j * width + i]!;
    }
    for (let i = 0; i < count; i++) {
      const a = from[i]!;
      const b = to[i]!;
      operateLine(values, base + a, base + b, width, factor[i]!);
      operateLine(values, base + a * width, base + b * width, 1, factor[i]!);
    }
    // A measure for pivots only: cross terms are left out.
    for (let i = 0; i < count; i++) {
      const [a, b] = [interior + from[i]!, interior + to[i]!];
      if (factor[i] === 0) exchange(diagonal, a, b);
      else diagonal[b] = factor[i]! ** 2 * diagonal[a]! + (a === b ? 0 : diagonal[b]!);
    }
  }

  function changeLoads(x: Float64Array, columns: number): void {
    for (let c = 0; c < columns; c++) operate(x, interior * columns + c, columns, 0, count);
  }

  function restoreMotions(x: Float64Array, columns: number): void {
    for (let i = count - 1; i >= 0; i--) {
      const a = (interior + from[i]!) * columns;
      const b = (interior + to[i]!) * columns;
      for (let c = 0; c < columns; c++) {
        if (factor[i] === 0) exchange(x, a + c, b + c);
        else if (a === b) x[a + c]! *= factor[i]!;
        else x[a + c]! += factor[i]! * x[b + c]!;
      }
    }
  }

  return { refresh, rows, changeBlock, changeLoads, restoreMotions };
}

function exchange(x: Float64Array, a: number, b: number): void {
  const held = x[a]!;
  x[a] = x[b]!;
  x[b] = held;
}
