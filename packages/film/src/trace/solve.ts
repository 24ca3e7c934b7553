/** Dense symmetric positive definite systems of a few hundred unknowns: Cholesky, solution, inverse. */

/** Lower factor L of a (row by row, n x n), or null where `a` is not positive definite. */
export function cholesky(a: Float64Array, n: number): Float64Array | null {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      const ri = i * n;
      const rj = j * n;
      for (let k = 0; k < j; k++) sum -= l[ri + k]! * l[rj + k]!;
      if (i === j) {
        if (!(sum > 0)) return null;
        l[ri + i] = Math.sqrt(sum);
      } else {
        l[ri + j] = sum / l[rj + j]!;
      }
    }
  }
  return l;
}

/** x with L Lᵀ x = b. */
export function solveWith(l: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    let sum = x[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  return x;
}

/** (L Lᵀ)⁻¹, full. */
export function inverseOf(l: Float64Array, n: number): Float64Array {
  const inv = new Float64Array(n * n);
  const m = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    m[j * n + j] = 1 / l[j * n + j]!;
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= l[i * n + k]! * m[k * n + j]!;
      m[i * n + j] = sum / l[i * n + i]!;
    }
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += m[k * n + i]! * m[k * n + j]!;
      inv[i * n + j] = sum;
      inv[j * n + i] = sum;
    }
  }
  return inv;
}
