/**
 * Blur acts on the beam, not on its logarithm: -ln(K * exp(-m)) lies below K * m wherever m varies inside the kernel K,
 * most of all at the outer edge. This is that difference for one row of the bone model.
 */
/** Grid steps in one sigma of the core. */
const STEPS = 2.5;
const REACH = 4;

/** Antiderivative of sqrt(1 - u^2), running on level outside [-1, 1]. */
function integral(u: number): number {
  if (u <= -1) return -Math.PI / 4;
  if (u >= 1) return Math.PI / 4;
  return (u * Math.sqrt(1 - u * u) + Math.asin(u)) / 2;
}

/** One elliptical shadow of the row, its height negative for a canal. */
export interface Shadow {
  readonly centre: number;
  readonly half: number;
  readonly height: number;
}

/** What must be added to the blurred shadows at x, attenuation; `unitsPerLog` are film values to one natural logarithm. */
export function blurDeficit(
  shadows: readonly Shadow[],
  kernel: { readonly core: number; readonly wide: number; readonly tail: number },
  unitsPerLog: number,
): (x: number) => number {
  const step = kernel.core / STEPS;
  const margin = REACH * kernel.core;
  const from = Math.min(...shadows.map((s) => s.centre - s.half)) - margin;
  const to = Math.max(...shadows.map((s) => s.centre + s.half)) + margin;
  const count = Math.ceil((to - from) / step) + 1;
  const shadow = new Float64Array(count);
  for (const { centre, half, height } of shadows) {
    let left = integral((from - step / 2 - centre) / half);
    for (let j = 0; j < count; j++) {
      const right = integral((from + (j + 0.5) * step - centre) / half);
      // the cell's mean, so that the steep edge is met exactly
      shadow[j]! += (height * half * (right - left)) / step;
      left = right;
    }
  }
  const beam = shadow.map((m) => Math.exp(-m / unitsPerLog) - 1);
  const blurred = (v: Float64Array) => {
    const core = smoothed(v, kernel.core / step);
    if (kernel.tail === 0) return core;
    const wide = smoothed(v, kernel.wide / step);
    return core.map((c, j) => c + kernel.tail * (wide[j]! - c));
  };
  const b = blurred(beam);
  const deficit = blurred(shadow).map((m, j) => -unitsPerLog * Math.log1p(b[j]!) - m);
  return (x) => {
    const t = (x - from) / step;
    const j = Math.floor(t);
    if (j < 0 || j + 1 >= count) return 0;
    return deficit[j]! * (1 - (t - j)) + deficit[j + 1]! * (t - j);
  };
}

/** Gaussian of `sigma` cells; zero outside. */
function smoothed(v: Float64Array, sigma: number): Float64Array {
  const half = Math.ceil(REACH * sigma);
  const k = Float64Array.from({ length: half + 1 }, (_, i) => Math.exp(-(i * i) / (2 * sigma * sigma)));
  const norm = k.reduce((s, x) => s + 2 * x, -k[0]!);
  const out = new Float64Array(v.length);
  for (let j = 0; j < v.length; j++) {
    let sum = k[0]! * v[j]!;
    const left = Math.min(half, j);
    const right = Math.min(half, v.length - 1 - j);
    for (let i = 1; i <= left; i++) sum += k[i]! * v[j - i]!;
    for (let i = 1; i <= right; i++) sum += k[i]! * v[j + i]!;
    out[j] = sum / norm;
  }
  return out;
}
