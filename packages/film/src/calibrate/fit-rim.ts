/** Fits the shadow of a ball to the pixels of its ring, robustly, with what any film is like as prior. */
import { entry, value } from '@bonewright/evidence';
import type { Attenuation } from '../trace/attenuation.ts';
import { cholesky, inverseOf, solveWith } from '../trace/solve.ts';
import type { RoughBall } from './find-ball.ts';
import { predict, type Ring, type Task, UNKNOWNS, X } from './rim.ts';

/** The unknowns (see `X`), what they leave of each pixel, and how sure the short axis's half is. */
export interface RimFit {
  readonly x: Float64Array;
  readonly residual: Float64Array;
  readonly sdOfRadius: number;
}

/** How far noise is trusted to tell the gain, as a share of it. */
const GAIN_SD = 0.04;

/** What any film is like, as mean and sd of an unknown; the rest is left to the film. */
type Priors = ReadonlyMap<number, { mean: number; sd: number }>;

/** The most likely rim; null where the pixels do not hold one. */
export function fitRim(ring: Ring, film: Attenuation, rough: RoughBall, diameterMm: number | undefined): RimFit | null {
  const task: Task = { ring, rough, isLogOfBeam: film.isLogOfBeam, diameterMm };
  const contrast = rough.inside - rough.outside;
  const noise = noiseLevels(ring, rough);
  const gain = film.isLogOfBeam ? 1 : gainOf(contrast, noise);
  const sd = Float64Array.from(ring.v, (v) =>
    Math.min(noise.inside, noise.outside * Math.exp(Math.max(0, v - rough.outside) / (2 * gain))),
  );
  const tailSd = (entry('imaging.blur.tail-share').high - entry('imaging.blur.tail-share').low) / 2;
  const priors: Priors = new Map([
    [X.logBlur, { mean: 0, sd: 0.6 }],
    [X.tail, { mean: value('imaging.blur.tail-share'), sd: tailSd }],
    [X.logGain, { mean: Math.log(gain), sd: GAIN_SD }],
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
  const free = film.isLogOfBeam ? UNKNOWNS - 1 : UNKNOWNS;
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
  const start = x[X.logGain]!;
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
    next[X.logBlur] = Math.min(1.6, Math.max(-1, next[X.logBlur]!));
    next[X.logGain] = Math.min(start + 1, Math.max(start - 1, next[X.logGain]!));
    const gain = free < UNKNOWNS ? 1 : Math.exp(next[X.logGain]!);
    next[X.depth] = Math.min(9 * gain, Math.max(0.7 * gain, next[X.depth]!));
    next[X.tail] = Math.min(0.3, Math.max(0, next[X.tail]!));
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
  const sdOfRadius = Math.sqrt(
    variance(X.radius) + (x[X.radius]! * x[X.radius]! * (variance(X.p) + variance(X.q))) / 2,
  );
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
