/**
 * The largest eigenvalue of K^-1 M by Lanczos' method in the inner product of K, with full reorthogonalisation.
 * K is symmetric and positive, M symmetric and of any sign.
 */
import { symmetricEigen } from '../assemble/eigen.ts';

const MOST_STEPS = 300;
/** Steps between looks at the eigenvalue. */
const LOOK = 6;
/** Relative change that is still allowed to come. */
const CLOSE = 1e-10;
/** What is left of a new direction, as a share of it, when the space is used up. */
const USED_UP = 1e-12;

export interface Pencil {
  readonly size: number;
  /** K^-1 b, as a new vector. */
  solve(b: Float64Array): Float64Array;
  /** M v, as a new vector. */
  apply(v: Float64Array): Float64Array;
}

/** The largest eigenvalue, and the largest by size (for judging what is rounding). Deterministic. */
export function largestEigenvalue({ size, solve, apply }: Pencil): {
  readonly largest: number;
  readonly scale: number;
} {
  const basis: { v: Float64Array; kv: Float64Array }[] = [];
  const diagonal: number[] = [];
  const beside: number[] = [];
  let kv = startVector(size);
  let v = solve(kv);
  let length = Math.sqrt(dot(v, kv));
  let found = { largest: 0, scale: 0, error: Number.POSITIVE_INFINITY };
  for (let step = 1; step <= Math.min(size, MOST_STEPS); step++) {
    basis.push({ v: scaled(v, 1 / length), kv: scaled(kv, 1 / length) });
    kv = apply(basis.at(-1)!.v);
    v = solve(kv);
    const whole = Math.sqrt(Math.max(0, dot(v, kv)));
    diagonal.push(dot(basis.at(-1)!.v, kv));
    // Twice is enough: the second pass takes away what rounding left of the first.
    for (let pass = 0; pass < 2; pass++) for (const one of basis) takeAway(v, kv, one);
    length = Math.sqrt(Math.max(0, dot(v, kv)));
    const isLast = length <= USED_UP * whole || step === Math.min(size, MOST_STEPS);
    if (isLast || step % LOOK === 0) found = lookAt(diagonal, beside, length);
    if (isLast || found.error <= CLOSE * Math.abs(found.largest)) break;
    beside.push(length);
  }
  return found;
}

function takeAway(
  v: Float64Array,
  kv: Float64Array,
  one: { readonly v: Float64Array; readonly kv: Float64Array },
): void {
  const share = dot(v, one.kv);
  for (let i = 0; i < v.length; i++) {
    v[i]! -= share * one.v[i]!;
    kv[i]! -= share * one.kv[i]!;
  }
}

/** Eigenvalues of the tridiagonal matrix so far; the error is bounded by what the last step left over. */
function lookAt(diagonal: readonly number[], beside: readonly number[], left: number) {
  const n = diagonal.length;
  const matrix = new Float64Array(n * n);
  diagonal.forEach((value, i) => {
    matrix[i * n + i] = value;
    if (i + 1 < n) matrix[i * n + i + 1] = matrix[(i + 1) * n + i] = beside[i]!;
  });
  const { values, vectors } = symmetricEigen(matrix, n);
  const largest = values[n - 1]!;
  const scale = Math.max(Math.abs(values[0]!), Math.abs(largest));
  return { largest, scale, error: Math.abs(left * vectors[n * n - 1]!) };
}

/** A vector that leans on no direction: a fixed linear congruential sequence (Numerical Recipes' constants). */
function startVector(size: number): Float64Array {
  let state = 1;
  return Float64Array.from({ length: size }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32 - 0.5;
  });
}

const scaled = (v: Float64Array, factor: number): Float64Array => v.map((value) => value * factor);

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
