/** A small full symmetric system, upper triangle by rows: K = UT D U, row k holding d_k U_k after the factorisation. */
import { type Judge, SUSPECT } from './reference-kernel.ts';

/** Factors in place; every pivot that is small beside `diagonal` is given to `judge`. */
export function factorSquare(
  values: Float64Array,
  n: number,
  diagonal: Float64Array,
  inverse: Float64Array,
  judge: Judge,
): void {
  for (let k = 0; k < n; k++) {
    const row = k * n;
    let pivot = values[row + k]!;
    if (!(pivot > SUSPECT * diagonal[k]!)) pivot = judge(k, pivot);
    inverse[k] = 1 / pivot;
    for (let i = k + 1; i < n; i++) {
      const share = values[row + i]! * inverse[k]!;
      if (share === 0) continue;
      for (let j = i, target = i * n; j < n; j++) values[target + j]! -= share * values[row + j]!;
    }
  }
}

/** Solves for one right side, in place. */
export function solveSquare(values: Float64Array, n: number, inverse: Float64Array, x: Float64Array): void {
  for (let k = 0; k < n; k++) {
    const share = x[k]! * inverse[k]!;
    for (let j = k + 1; j < n; j++) x[j]! -= values[k * n + j]! * share;
  }
  backSquare(values, n, inverse, x, n);
}

/** The second half of `solveSquare`, on the first `count` unknowns: those from `count` on are given in `x`. */
export function backSquare(
  values: Float64Array,
  n: number,
  inverse: Float64Array,
  x: Float64Array,
  count: number,
): void {
  for (let k = count - 1; k >= 0; k--) {
    let sum = x[k]!;
    for (let j = k + 1; j < n; j++) sum -= values[k * n + j]! * x[j]!;
    x[k] = sum * inverse[k]!;
  }
}
