/**
 * The shadow of an elliptical cylinder, f(x) = sqrt(1 - (x/a)^2), blurred by a Gaussian of sd sigma: value and the
 * derivatives that a fit needs. f is shared out to a fine grid by exact integrals (second antiderivative), so that
 * its infinitely steep edge costs no accuracy; the grid's own blur (variance h^2/6) is taken off the Gaussian.
 */

/** The blurred shadow on a fine grid over x >= 0 (it is even), with its first two derivatives by x. */
export interface BlurredHalfEllipse {
  readonly a: number;
  readonly sigma: number;
  readonly step: number;
  readonly g: Float64Array;
  readonly gx: Float64Array;
  readonly gxx: Float64Array;
}

/** Reach of the blur in sigma. */
const REACH = 5;
/** Grid steps in one sigma. */
const STEPS = 2.5;

/** Second antiderivative of sqrt(1 - u^2), running on linearly outside [-1, 1]. */
function secondIntegral(u: number): number {
  if (u <= -1) return 0;
  if (u >= 1) return (Math.PI / 2) * u;
  const q = 1 - u * u;
  const root = Math.sqrt(q);
  return (u * Math.asin(u) + root) / 2 - (q * root) / 6 + (Math.PI / 4) * u;
}

/** Tabulates the blurred shadow of half-width a (> 0), blur sigma (> 0), both in the same unit as x. */
export function blurredHalfEllipse(a: number, sigma: number): BlurredHalfEllipse {
  const step = sigma / STEPS;
  const half = Math.ceil(REACH * STEPS);
  const count = Math.ceil(a / step) + half + 2;
  const mass = binned(a, step, count + half + 1);
  const kernel = kernels(sigma, step, half);
  const g = new Float64Array(count);
  const gx = new Float64Array(count);
  const gxx = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    for (let k = -half; k <= half; k++) {
      const m = mass[Math.abs(i - k)]!;
      if (m === 0) continue;
      s0 += m * kernel.k0[k + half]!;
      s1 += m * kernel.k1[k + half]!;
      s2 += m * kernel.k2[k + half]!;
    }
    g[i] = s0;
    gx[i] = s1;
    gxx[i] = s2;
  }
  return { a, sigma, step, g, gx, gxx };
}

/** f shared out to the grid points 0, step, 2 step, ... by hat functions, exactly. */
function binned(a: number, step: number, count: number): Float64Array {
  const mass = new Float64Array(count);
  const scale = (a * a) / step;
  let before = secondIntegral(-step / a);
  let here = secondIntegral(0);
  for (let j = 0; j < count; j++) {
    const after = secondIntegral(((j + 1) * step) / a);
    mass[j] = (j - 1) * step >= a ? 0 : scale * (after - 2 * here + before);
    before = here;
    here = after;
  }
  return mass;
}

function kernels(sigma: number, step: number, half: number): { k0: Float64Array; k1: Float64Array; k2: Float64Array } {
  const variance = sigma * sigma - (step * step) / 6;
  const k0 = new Float64Array(2 * half + 1);
  const k1 = new Float64Array(2 * half + 1);
  const k2 = new Float64Array(2 * half + 1);
  const norm = 1 / Math.sqrt(2 * Math.PI * variance);
  for (let k = -half; k <= half; k++) {
    const y = k * step;
    const phi = norm * Math.exp((-y * y) / (2 * variance));
    k0[k + half] = phi;
    k1[k + half] = (-y / variance) * phi;
    k2[k + half] = ((y * y) / variance - 1) * (phi / variance);
  }
  return { k0, k1, k2 };
}

/** Value, slope by x, by a, and by sigma at x; written into `out`. */
export function shadowAt(b: BlurredHalfEllipse, x: number, out: Float64Array): void {
  const t = Math.abs(x) / b.step;
  const i = Math.floor(t);
  if (i + 1 >= b.g.length) {
    out.fill(0);
    return;
  }
  const u = t - i;
  const h = b.step;
  // cubic Hermite on value and slope, linear on the second derivative
  const u2 = u * u;
  const u3 = u2 * u;
  const g0 = b.g[i]!;
  const g1 = b.g[i + 1]!;
  const d0 = b.gx[i]! * h;
  const d1 = b.gx[i + 1]! * h;
  const g = g0 * (2 * u3 - 3 * u2 + 1) + d0 * (u3 - 2 * u2 + u) + g1 * (3 * u2 - 2 * u3) + d1 * (u3 - u2);
  const e0 = b.gxx[i]! * h;
  const e1 = b.gxx[i + 1]! * h;
  const slope =
    b.gx[i]! * (2 * u3 - 3 * u2 + 1) + e0 * (u3 - 2 * u2 + u) + b.gx[i + 1]! * (3 * u2 - 2 * u3) + e1 * (u3 - u2);
  const gxx = b.gxx[i]! * (1 - u) + b.gxx[i + 1]! * u;
  out[0] = g;
  out[1] = x < 0 ? -slope : slope;
  out[2] = -(Math.abs(x) * slope + b.sigma * b.sigma * gxx) / b.a;
  out[3] = b.sigma * gxx;
}
