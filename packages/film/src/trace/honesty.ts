/**
 * How far the fit's own covariance may be trusted: from its residuals, how large they are and how far they hang together
 * along and across the bone. Noise shared between pixels, and a model that is not quite right, both show there.
 */
import { value } from '@bonewright/evidence';
import type { CellRow } from './cells.ts';

export interface Honesty {
  /** Factor on the sd of everything fitted. */
  readonly sdFactor: number;
  /** Further factor on the sd at s, where the model fits worse than it usually does. */
  at(s: number): number;
}

/** Residuals beyond this many sd are not the model's, but something else's. */
const FOREIGN = 4;
/** Neighbours summed in each direction. */
const SUM = 3;
const LARGEST_FACTOR = 5;
/** A bone that fits badly throughout may be the wrong one. */
const DOUBTED = 2;

export function honestyOf(
  rows: readonly CellRow[],
  residuals: readonly Float64Array[],
  rowChi: readonly number[],
): Honesty {
  const spread = Math.sqrt(variance(residuals.flatMap((r) => [...r])));
  const across = togetherness(residuals.map((r) => [...r]));
  const along = togetherness(columns(rows, residuals));
  const usual = rowChi.length > 0 ? [...rowChi].sort((a, b) => a - b)[rowChi.length >> 1]! : 1;
  const doubt = usual > value('imaging.trace.doubt') ? DOUBTED : 1;
  const sdFactor = doubt * Math.min(LARGEST_FACTOR, Math.max(0.5, spread * Math.sqrt(across * along)));
  return {
    sdFactor,
    at: (s) => {
      let sum = 0;
      let weight = 0;
      const reach = rows.length > 1 ? 2 * (rows[1]!.s - rows[0]!.s) : 1;
      for (const [i, row] of rows.entries()) {
        const w = Math.exp(-(((row.s - s) / reach) ** 2));
        sum += w * rowChi[i]!;
        weight += w;
      }
      return weight > 0 ? Math.sqrt(Math.max(1, sum / weight / usual)) : 1;
    },
  };
}

function variance(r: readonly number[]): number {
  const own = r.filter((v) => Math.abs(v) < FOREIGN);
  return own.length > 0 ? own.reduce((s, v) => s + v * v, 0) / own.length : 1;
}

/** Variance of sums of neighbours over what independent ones would have: 1 where they are independent. */
function togetherness(lines: readonly (readonly number[])[]): number {
  let sums = 0;
  let singles = 0;
  let count = 0;
  for (const line of lines) {
    for (let i = 0; i + SUM <= line.length; i++) {
      const part = line.slice(i, i + SUM);
      if (part.some((v) => !(Math.abs(v) < FOREIGN))) continue;
      sums += part.reduce((s, v) => s + v, 0) ** 2;
      singles += part.reduce((s, v) => s + v * v, 0);
      count++;
    }
  }
  return count > 20 && singles > 0 ? Math.max(1, sums / singles) : 1;
}

/** Residuals of cells that lie above one another, by their distance from the bone's left edge of cells. */
function columns(rows: readonly CellRow[], residuals: readonly Float64Array[]): number[][] {
  const lines = new Map<number, number[]>();
  for (const [k, row] of rows.entries()) {
    for (let i = 0; i < row.x.length; i++) {
      const key = Math.round(row.x[i]!);
      const line = lines.get(key) ?? [];
      while (line.length < k) line.push(Number.NaN);
      line[k] = residuals[k]![i]!;
      lines.set(key, line);
    }
  }
  return [...lines.values()];
}
