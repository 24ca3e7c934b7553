/** The shadow of a steel ball as a film shows it: beam through a sphere, blurred with core and tail, over scatter. */
import { value } from '@bonewright/evidence';
import type { Attenuation } from '../trace/attenuation.ts';
import type { RoughBall } from './find-ball.ts';

/** The pixels of the ball and a rim about it. */
export interface Ring {
  readonly col: Float64Array;
  readonly row: Float64Array;
  readonly v: Float64Array;
}

export const RIM = { outsidePx: 11, sectors: 24 };

export function ringPixels(film: Attenuation, rough: RoughBall): Ring {
  const col: number[] = [];
  const row: number[] = [];
  const v: number[] = [];
  const out = rough.radiusPx + RIM.outsidePx;
  for (let r = Math.ceil(rough.centre[1] - out); r <= rough.centre[1] + out; r++) {
    for (let c = Math.ceil(rough.centre[0] - out); c <= rough.centre[0] + out; c++) {
      const d = Math.hypot(c - rough.centre[0], r - rough.centre[1]);
      if (d > out || r < 0 || c < 0 || r >= film.rows || c >= film.cols) continue;
      col.push(c);
      row.push(r);
      v.push(film.values[r * film.cols + c]!);
    }
  }
  return { col: Float64Array.from(col), row: Float64Array.from(row), v: Float64Array.from(v) };
}

/** Places of the fit's unknowns: ellipse, blur, background with its slopes, depth of the shadow, tail, gain of a LOG film. */
export const X = {
  col: 0,
  row: 1,
  radius: 2,
  p: 3,
  q: 4,
  logBlur: 5,
  base: 6,
  baseCol: 7,
  baseRow: 8,
  depth: 9,
  tail: 10,
  logGain: 11,
} as const;
export const UNKNOWNS = 12;

/** What is fitted to. */
export interface Task {
  readonly ring: Ring;
  readonly rough: RoughBall;
  readonly isLogOfBeam: boolean;
  readonly diameterMm: number | undefined;
}

/** The film's values over the ring for the unknowns `x`. */
export function predict(x: Float64Array, task: Task): Float64Array {
  const { ring, rough } = task;
  const radius = x[X.radius]!;
  const gain = task.isLogOfBeam ? 1 : Math.exp(x[X.logGain]!);
  // scatter leaves this much of the beam where nothing passes
  const floor = Math.exp(-x[X.depth]! / gain);
  const core = blurredRim(radius, Math.exp(x[X.logBlur]!), task.diameterMm);
  const wide = blurredRim(radius, value('imaging.blur.tail-ratio') * Math.exp(x[X.logBlur]!), task.diameterMm);
  const out = new Float64Array(ring.v.length);
  for (let i = 0; i < out.length; i++) {
    const dx = ring.col[i]! - x[X.col]!;
    const dy = ring.row[i]! - x[X.row]!;
    const d2 = Math.max(1e-12, dx * dx + dy * dy);
    const depth = radius * (1 + (x[X.p]! * (dx * dx - dy * dy) + x[X.q]! * 2 * dx * dy) / d2) - Math.sqrt(d2);
    const beam = (1 - x[X.tail]!) * core(depth) + x[X.tail]! * wide(depth);
    const base =
      x[X.base]! + x[X.baseCol]! * (ring.col[i]! - rough.centre[0]) + x[X.baseRow]! * (ring.row[i]! - rough.centre[1]);
    out[i] = base - gain * Math.log(floor + (1 - floor) * beam);
  }
  return out;
}

/** Attenuation of a pixel's length of ball through which nothing passes. */
const OPAQUE = 50;

/** Share of the beam at a depth (pixels) inside the rim: exp(-mu chord), blurred, the rim's own curve included. */
function blurredRim(radiusPx: number, blur: number, diameterMm: number | undefined): (depth: number) => number {
  // without a diameter the ball counts as opaque up to its rim
  const mu = diameterMm === undefined ? OPAQUE : (value('imaging.steel.attenuation') * diameterMm) / (2 * radiusPx);
  const step = blur / 12;
  const half = 60;
  const first = -Math.ceil((RIM.outsidePx + 6) / step);
  const count = Math.ceil((RIM.outsidePx + 6 + Math.min(radiusPx, 12 * blur + 6)) / step);
  const raw = new Float64Array(count + 2 * half);
  for (let i = 0; i < raw.length; i++) {
    // mean over the step, so that the sudden start of the chord does not jump
    let sum = 0;
    for (let k = 0; k < 4; k++) {
      const inside = Math.min((first - half + i + (k + 0.5) / 4 - 0.5) * step, radiusPx);
      sum += inside <= 0 ? 1 : Math.exp(-mu * 2 * Math.sqrt(inside * (2 * radiusPx - inside)));
    }
    raw[i] = sum / 4;
  }
  const kernel = Float64Array.from({ length: 2 * half + 1 }, (_, k) =>
    Math.exp(-(((k - half) * step) ** 2) / (2 * blur * blur)),
  );
  const norm = kernel.reduce((s, k) => s + k, 0);
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (let k = 0; k <= 2 * half; k++) sum += kernel[k]! * raw[i + k]!;
    out[i] = sum / norm;
  }
  const curve = (blur * blur) / (2 * radiusPx);
  return (depth) => {
    const t = Math.max(0, Math.min(count - 1.001, (depth - curve) / step - first));
    const i = Math.floor(t);
    return out[i]! * (1 - (t - i)) + out[i + 1]! * (t - i);
  };
}
