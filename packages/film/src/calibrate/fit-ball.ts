/**
 * Fits a steel ball's shadow to a fraction of a pixel: an ellipse whose rim follows the beam through a sphere
 * (chord, attenuation, scatter floor), blurred. On a LOG film the gain is fitted too, so that the blur acts on the beam.
 */
import { entry, value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import type { BallFit, Pixel } from '../model/trace.ts';
import { type Attenuation, attenuation } from '../trace/attenuation.ts';
import { cholesky, inverseOf, solveWith } from '../trace/solve.ts';
import { findBall, type NoBall, type RoughBall } from './find-ball.ts';

/** The ball's ellipse and how sure its short axis is. */
export interface FittedBall extends BallFit {
  readonly shortAxisSdPx: number;
}

/** The ball near that point; or why the film does not say. A ratio above 1.05, a cut or a gap in the rim is refused. */
export function fitBall(image: GreyImage, near: Pixel, diameterMm?: number): FittedBall | NoBall {
  return fitBallIn(attenuation(image), near, diameterMm);
}

/** As `fitBall`, on a film already turned into attenuation; `diameterMm` makes the sphere's rim physical. */
export function fitBallIn(film: Attenuation, near: Pixel, diameterMm: number | undefined): FittedBall | NoBall {
  const rough = findBall(film, near);
  if ('why' in rough) return rough;
  const ring = ringPixels(film, rough);
  const fit = leastSquares(ring, film, rough, diameterMm);
  if (!fit) return { why: 'the rim of the ball could not be fitted' };
  const [cx, cy, a, p, q] = fit.x as unknown as [number, number, number, number, number];
  // radius along direction t: a (1 + p cos 2t + q sin 2t)
  const e = Math.hypot(p, q);
  const ratio = (1 + e) / (1 - e);
  if (ratio > value('imaging.ball.largest-axis-ratio')) {
    return {
      why: `the ball's shadow is stretched ${ratio.toFixed(2)} to 1; it is not round, or lies too far off the beam`,
    };
  }
  const gap = rimGap(ring, fit, rough);
  if (gap) return { why: gap };
  return {
    centre: [cx, cy],
    shortAxisPx: 2 * a * (1 - e),
    longAxisPx: 2 * a * (1 + e),
    angleDeg: (Math.atan2(q, p) * 90) / Math.PI,
    shortAxisSdPx: 2 * fit.sdOfRadius,
  };
}

interface Ring {
  readonly col: Float64Array;
  readonly row: Float64Array;
  readonly v: Float64Array;
}

const RIM = { outsidePx: 11, sectors: 24 };

function ringPixels(film: Attenuation, rough: RoughBall): Ring {
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

/** Unknowns of the fit, in this order. */
const UNKNOWN = [
  'col',
  'row',
  'radius',
  'p',
  'q',
  'logBlur',
  'base',
  'baseCol',
  'baseRow',
  'depth',
  'tail',
  'logGain',
] as const;

interface RimFit {
  readonly x: Float64Array;
  readonly residual: Float64Array;
  readonly sdOfRadius: number;
}

interface Task {
  readonly ring: Ring;
  readonly rough: RoughBall;
  readonly isLogOfBeam: boolean;
  readonly diameterMm: number | undefined;
}

function predict(x: Float64Array, task: Task): Float64Array {
  const { ring, rough } = task;
  const radius = x[2]!;
  const gain = task.isLogOfBeam ? 1 : Math.exp(x[11]!);
  // scatter leaves this much of the beam where nothing passes
  const floor = Math.exp(-x[9]! / gain);
  const core = blurredRim(radius, Math.exp(x[5]!), task.diameterMm);
  const wide = blurredRim(radius, value('imaging.blur.tail-ratio') * Math.exp(x[5]!), task.diameterMm);
  const out = new Float64Array(ring.v.length);
  for (let i = 0; i < out.length; i++) {
    const dx = ring.col[i]! - x[0]!;
    const dy = ring.row[i]! - x[1]!;
    const d2 = Math.max(1e-12, dx * dx + dy * dy);
    const depth = radius * (1 + (x[3]! * (dx * dx - dy * dy) + x[4]! * 2 * dx * dy) / d2) - Math.sqrt(d2);
    const beam = (1 - x[10]!) * core(depth) + x[10]! * wide(depth);
    const base = x[6]! + x[7]! * (ring.col[i]! - rough.centre[0]) + x[8]! * (ring.row[i]! - rough.centre[1]);
    out[i] = base - gain * Math.log(floor + (1 - floor) * beam);
  }
  return out;
}

/** How far noise is trusted to tell the gain, as a share of it. */
const GAIN_SD = 0.04;

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

/** What any film is like, as mean and sd of an unknown; the rest is left to the film. */
type Priors = ReadonlyMap<number, { mean: number; sd: number }>;

function leastSquares(ring: Ring, film: Attenuation, rough: RoughBall, diameterMm: number | undefined): RimFit | null {
  const task: Task = { ring, rough, isLogOfBeam: film.isLogOfBeam, diameterMm };
  const contrast = rough.inside - rough.outside;
  const noise = noiseLevels(ring, rough);
  const gain = film.isLogOfBeam ? 1 : gainOf(contrast, noise);
  const sd = Float64Array.from(ring.v, (v) =>
    Math.min(noise.inside, noise.outside * Math.exp(Math.max(0, v - rough.outside) / (2 * gain))),
  );
  const tailSd = (entry('imaging.blur.tail-share').high - entry('imaging.blur.tail-share').low) / 2;
  const priors: Priors = new Map([
    [5, { mean: 0, sd: 0.6 }],
    [10, { mean: value('imaging.blur.tail-share'), sd: tailSd }],
    [11, { mean: Math.log(gain), sd: GAIN_SD }],
  ]);
  const start = [
    ...rough.centre,
    rough.radiusPx - 0.5,
    0,
    0,
    0,
    rough.outside,
    0,
    0,
    contrast,
    value('imaging.blur.tail-share'),
    Math.log(gain),
  ];
  const free = film.isLogOfBeam ? UNKNOWN.length - 1 : UNKNOWN.length;
  const steps = [
    0.02,
    0.02,
    0.02,
    1e-3,
    1e-3,
    0.02,
    contrast * 1e-3,
    contrast * 1e-4,
    contrast * 1e-4,
    contrast * 2e-3,
    0.005,
    0.02,
  ];
  return descend(task, Float64Array.from(start), steps, free, sd, priors);
}

/** Noise beside the ball and in its middle, from differences of neighbours along the rows: the median, so that the rim does not count. */
function noiseLevels(ring: Ring, rough: RoughBall): { inside: number; outside: number } {
  const inside: number[] = [];
  const outside: number[] = [];
  for (let i = 0; i + 1 < ring.v.length; i++) {
    if (ring.row[i] !== ring.row[i + 1] || ring.col[i + 1] !== ring.col[i]! + 1) continue;
    const d = Math.hypot(ring.col[i]! - rough.centre[0], ring.row[i]! - rough.centre[1]);
    const step = Math.abs(ring.v[i + 1]! - ring.v[i]!);
    if (d < 0.6 * rough.radiusPx) inside.push(step);
    if (d > rough.radiusPx + 6.5) outside.push(step);
  }
  const spread = (v: number[]) => (1.4826 * v.sort((a, b) => a - b)[v.length >> 1]!) / Math.SQRT2;
  const least = 1e-4 * (rough.inside - rough.outside);
  return { inside: Math.max(least, spread(inside)), outside: Math.max(least, spread(outside)) };
}

/**
 * Units of a LOG film to one natural logarithm of the beam: quanta make the noise's variance go as 1 / beam, so that
 * the contrast in logarithms is that of the two variances. Kept between a floor of 10 % and one of 0.5 %.
 */
function gainOf(contrast: number, noise: { inside: number; outside: number }): number {
  const logs = 2 * Math.log(noise.inside / noise.outside);
  return contrast / Math.min(5.3, Math.max(2.3, logs));
}

function descend(
  task: Task,
  x: Float64Array,
  steps: readonly number[],
  free: number,
  sd: Float64Array,
  priors: Priors,
): RimFit | null {
  const { v } = task.ring;
  const start = x[11]!;
  let model = predict(x, task);
  const robust = (m: Float64Array, at: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < m.length; i++) sum += 2 * Math.log1p(((v[i]! - m[i]!) / sd[i]!) ** 2 / 4);
    for (const [k, p] of priors) if (k < free) sum += ((at[k]! - p.mean) / p.sd) ** 2 / 2;
    return sum;
  };
  let cost = robust(model, x);
  let damping = 1e-2;
  let normal = new Float64Array(free * free);
  for (let iteration = 0; iteration < 40 && damping < 1e7; iteration++) {
    const system = normalOf(task, x, model, steps, free, sd, priors);
    normal = system.normal;
    const damped = Float64Array.from(normal);
    for (let a = 0; a < free; a++) damped[a * free + a]! *= 1 + damping;
    const l = cholesky(damped, free);
    if (!l) return null;
    const d = solveWith(l, free, system.pull);
    const next = x.map((value, k) => value + (d[k] ?? 0));
    next[5] = Math.min(1.6, Math.max(-1, next[5]!));
    next[11] = Math.min(start + 1, Math.max(start - 1, next[11]!));
    const gain = free < UNKNOWN.length ? 1 : Math.exp(next[11]!);
    next[9] = Math.min(9 * gain, Math.max(0.7 * gain, next[9]!));
    next[10] = Math.min(0.3, Math.max(0, next[10]!));
    const after = predict(next, task);
    const nextCost = robust(after, next);
    if (nextCost < cost) {
      const gain = cost - nextCost;
      x.set(next);
      model = after;
      cost = nextCost;
      damping *= 0.3;
      if (gain < 1e-3) break;
    } else {
      damping *= 6;
    }
  }
  const l = cholesky(normal, free);
  if (!l) return null;
  const cov = inverseOf(l, free);
  const variance = (k: number) => cov[k * free + k]!;
  // short axis a (1 - e): its own sd and that of the ellipse's terms
  const sdOfRadius = Math.sqrt(variance(2) + (x[2]! * x[2]! * (variance(3) + variance(4))) / 2);
  return { x, residual: model.map((m, i) => v[i]! - m), sdOfRadius };
}

function normalOf(
  task: Task,
  x: Float64Array,
  model: Float64Array,
  steps: readonly number[],
  free: number,
  sd: Float64Array,
  priors: Priors,
) {
  const { v } = task.ring;
  const slopes = Array.from({ length: free }, (_, k) => {
    const up = Float64Array.from(x);
    up[k]! += steps[k]!;
    return predict(up, task).map((m, i) => (m - model[i]!) / steps[k]!);
  });
  const weight = model.map((m, i) => 1 / (sd[i]! ** 2 * (1 + ((v[i]! - m) / sd[i]!) ** 2 / 4)));
  const normal = new Float64Array(free * free);
  const pull = new Float64Array(free);
  for (let a = 0; a < free; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let i = 0; i < v.length; i++) sum += weight[i]! * slopes[a]![i]! * slopes[b]![i]!;
      normal[a * free + b] = sum;
      normal[b * free + a] = sum;
    }
    for (let i = 0; i < v.length; i++) pull[a]! += weight[i]! * slopes[a]![i]! * (v[i]! - model[i]!);
  }
  for (const [k, p] of priors) {
    if (k >= free) continue;
    normal[k * free + k]! += 1 / p.sd ** 2;
    pull[k]! -= (x[k]! - p.mean) / p.sd ** 2;
  }
  return { normal, pull };
}

/** A stretch of the rim without a shadow's edge where the ellipse says it is. */
function rimGap(ring: Ring, fit: RimFit, rough: RoughBall): string | null {
  const bad = new Float64Array(RIM.sectors);
  const count = new Float64Array(RIM.sectors);
  for (let i = 0; i < ring.v.length; i++) {
    const dx = ring.col[i]! - fit.x[0]!;
    const dy = ring.row[i]! - fit.x[1]!;
    if (Math.abs(Math.hypot(dx, dy) - fit.x[2]!) > 2.5) continue;
    const k = Math.floor(((Math.atan2(dy, dx) + Math.PI) / (2 * Math.PI)) * RIM.sectors) % RIM.sectors;
    bad[k]! += fit.residual[i]!;
    count[k]! += 1;
  }
  const limit = 0.12 * (rough.inside - rough.outside);
  for (let k = 0; k < RIM.sectors; k++) {
    if (count[k]! < 3) return "the ball is cut by the film's edge; its size cannot be read";
    if (Math.abs(bad[k]! / count[k]!) > limit)
      return 'the rim of the ball has a gap or something lies over it; its size cannot be read';
  }
  return null;
}
