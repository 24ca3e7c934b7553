/**
 * Symmetric positive definite systems whose rows begin late: neighbours along the bone couple, far stations do not.
 * Row i of the lower triangle is kept from column `first[i]` to the diagonal; Cholesky stays inside that envelope.
 */

/** Shape of the envelope: where each row begins, and where it lies in the values. */
export interface Envelope {
  readonly n: number;
  readonly first: Int32Array;
  readonly start: Int32Array;
  readonly size: number;
}

export function envelope(first: Int32Array): Envelope {
  const n = first.length;
  const start = new Int32Array(n);
  let size = 0;
  for (let i = 0; i < n; i++) {
    start[i] = size - first[i]!;
    size += i - first[i]! + 1;
  }
  return { n, first, start, size };
}

/** Lower factor in the same envelope, or null where `a` is not positive definite. */
export function factor(e: Envelope, a: Float64Array): Float64Array | null {
  const l = new Float64Array(e.size);
  for (let i = 0; i < e.n; i++) {
    const fi = e.first[i]!;
    const si = e.start[i]!;
    for (let j = fi; j <= i; j++) {
      const sj = e.start[j]!;
      let sum = a[si + j]!;
      for (let k = Math.max(fi, e.first[j]!); k < j; k++) sum -= l[si + k]! * l[sj + k]!;
      if (i === j) {
        if (!(sum > 0)) return null;
        l[si + i] = Math.sqrt(sum);
      } else {
        l[si + j] = sum / l[sj + j]!;
      }
    }
  }
  return l;
}

/** y with L y = b. */
export function forward(e: Envelope, l: Float64Array, b: Float64Array): Float64Array {
  const y = Float64Array.from(b);
  for (let i = 0; i < e.n; i++) {
    const si = e.start[i]!;
    let sum = y[i]!;
    for (let k = e.first[i]!; k < i; k++) sum -= l[si + k]! * y[k]!;
    y[i] = sum / l[si + i]!;
  }
  return y;
}

/** x with L Lᵀ x = b. */
export function solved(e: Envelope, l: Float64Array, b: Float64Array): Float64Array {
  const x = forward(e, l, b);
  for (let i = e.n - 1; i >= 0; i--) {
    const si = e.start[i]!;
    const v = x[i]! / l[si + i]!;
    x[i] = v;
    for (let k = e.first[i]!; k < i; k++) x[k]! -= l[si + k]! * v;
  }
  return x;
}
