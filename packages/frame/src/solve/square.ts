/** A small full symmetric system, upper triangle by rows: K = UT D U, row k holding d_k U_k after the factorisation. */
import { type Judge, SUSPECT } from './reference-kernel.ts';

/**
 * Eliminates the first `count` unknowns in place, row by row; rows before `from` have been done. Every pivot that is small
 * beside `diagonal` is given to `judge`.
 */
export function eliminateSquare(
  values: Float64Array,
  n: number,
  from: number,
  count: number,
  diagonal: Float64Array,
  inverse: Float64Array,
  judge: Judge,
): void {
  for (let i = from; i < n; i++) {
    const row = i * n;
    const before = Math.min(i, count);
    for (let k = 0; k < before; k++) {
      const share = values[k * n + i]! * inverse[k]!;
      if (share === 0) continue;
      for (let j = i, source = k * n; j < n; j++) values[row + j]! -= share * values[source + j]!;
    }
    if (i >= count) continue;
    let pivot = values[row + i]!;
    if (!(pivot > SUSPECT * diagonal[i]!)) pivot = judge(i, pivot);
    inverse[i] = 1 / pivot;
  }
}

/** Takes the loads on the first `count` unknowns through to the rest. */
export function forwardSquare(
  values: Float64Array,
  n: number,
  count: number,
  inverse: Float64Array,
  x: Float64Array,
): void {
  for (let k = 0; k < count; k++) {
    const share = x[k]! * inverse[k]!;
    if (share === 0) continue;
    for (let j = k + 1; j < n; j++) x[j]! -= values[k * n + j]! * share;
  }
}

/** From the motions of the unknowns from `count` on, and the loads on those before, to the motions of these. */
export function backSquare(
  values: Float64Array,
  n: number,
  count: number,
  inverse: Float64Array,
  x: Float64Array,
): void {
  for (let k = count - 1; k >= 0; k--) {
    let sum = x[k]!;
    for (let j = k + 1; j < n; j++) sum -= values[k * n + j]! * x[j]!;
    x[k] = sum * inverse[k]!;
  }
}
