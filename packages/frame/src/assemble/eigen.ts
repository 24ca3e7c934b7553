/** Eigenvalues and eigenvectors of a small symmetric matrix by Jacobi's rotations. */

export interface Eigen {
  readonly values: Float64Array;
  /** Column c of the n x n matrix (row-major) belongs to values[c]; columns are orthonormal. */
  readonly vectors: Float64Array;
}

const MOST_SWEEPS = 40;

/** Eigen-decomposition of a symmetric n x n matrix (row-major, left as it is), eigenvalues rising. */
export function symmetricEigen(matrix: ArrayLike<number>, n: number): Eigen {
  const a = Float64Array.from(matrix);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  for (let sweep = 0; sweep < MOST_SWEEPS && offDiagonal(a, n) > 0; sweep++) {
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q);
  }
  const rising = [...Array(n).keys()].sort((i, j) => a[i * n + i]! - a[j * n + j]!);
  return {
    values: Float64Array.from(rising, (i) => a[i * n + i]!),
    vectors: Float64Array.from({ length: n * n }, (_, at) => v[Math.floor(at / n) * n + rising[at % n]!]!),
  };
}

function offDiagonal(a: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) sum += a[i * n + j]! ** 2;
  return sum;
}

/** Turns the plane of p and q so that a[p][q] becomes 0. */
function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
  const off = a[p * n + q]!;
  const gap = a[q * n + q]! - a[p * n + p]!;
  if (Math.abs(off) < Number.MIN_VALUE + 1e-17 * Math.abs(gap)) {
    a[p * n + q] = 0;
    a[q * n + p] = 0;
    return;
  }
  const theta = gap / (2 * off);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < n; k++) turn(a, k * n + p, k * n + q, c, s);
  for (let k = 0; k < n; k++) turn(a, p * n + k, q * n + k, c, s);
  for (let k = 0; k < n; k++) turn(v, k * n + p, k * n + q, c, s);
}

function turn(a: Float64Array, i: number, j: number, c: number, s: number): void {
  const x = a[i]!;
  const y = a[j]!;
  a[i] = c * x - s * y;
  a[j] = s * x + c * y;
}
