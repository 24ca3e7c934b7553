/**
 * From the rough chain of edges to a first bone model: of a grid of widths, canals and blurs the one whose shadow fits
 * the blocks' profiles best, heights and background by linear least squares.
 */
import { value } from '@bonewright/evidence';
import type { RoughBone } from './find.ts';
import { blurredHalfEllipse, shadowAt } from './half-ellipse.ts';
import { type BoneModel, modelOf } from './layout.ts';
import { cholesky, solveWith } from './solve.ts';
import { splineGrid } from './spline.ts';

/** Knots of the splines, in bone widths apart. */
const KNOTS_APART = 0.25;
/** The grid: what to add to the chain's half-widths (pixels), canal to outer width, blur (pixels). */
const GRID = { grow: [0, 1, 2], canal: [0.3, 0.45, 0.6, 0.7, 0.78, 0.86], blur: [0.8, 1.4] };
/** How far beside the bone a profile is looked at. */
const BESIDE = { halfWidths: 0.3, px: 3 };

/** Middle value; NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = values.filter((v) => !Number.isNaN(v)).sort((a, b) => a - b);
  return sorted.length > 0 ? sorted[sorted.length >> 1]! : Number.NaN;
}

/** One candidate on one block: heights, background, and what is left unexplained. */
interface BlockFit {
  readonly ho: number;
  readonly hi: number;
  readonly b0: number;
  readonly b1: number;
  readonly cost: number;
}

export interface Start {
  readonly model: BoneModel;
  /** Usual width in pixels and height of the shadow. */
  readonly width: number;
  readonly height: number;
  /** What the chain's half-widths are short of the outer edge, pixels. */
  readonly grow: number;
  readonly blurPx: number;
  /** Attenuation beside the bone at s. */
  beside(s: number): number;
}

/** The model that the fit starts from; null where no block shows a shadow like a bone's. */
export function startModel(rough: RoughBone, lengthPx: number, unitsPerLog: number | null): Start | null {
  let best: { cost: number; grow: number; canal: number; blur: number; blocks: readonly (BlockFit | null)[] } | null =
    null;
  for (const blur of GRID.blur) {
    for (const grow of GRID.grow) {
      for (const canal of GRID.canal) {
        const blocks = rough.s.map((_, k) => blockFit(rough, k, grow, canal, blur));
        // the median block decides, so that metal and overlaps do not
        const cost = median(blocks.map((b) => b?.cost ?? Number.NaN));
        if (!Number.isNaN(cost) && (!best || cost < best.cost)) best = { cost, grow, canal, blur, blocks };
      }
    }
  }
  if (!best) return null;
  const { grow, canal, blur, blocks } = best;
  const height = median(blocks.map((b) => b?.ho ?? Number.NaN));
  const hi = median(blocks.map((b) => b?.hi ?? Number.NaN));
  if (!(height > 0)) return null;
  const width = 2 * (median(rough.halfWidth) + grow);
  const grid = splineGrid(lengthPx, KNOTS_APART * width);
  const centre = smoothed(rough.s, rough.centre);
  const half = smoothed(rough.s, rough.halfWidth);
  const beside = smoothed(
    rough.s,
    blocks.map((b) => b?.b0 ?? Number.NaN),
  );
  const tilt = median(blocks.map((b) => b?.b1 ?? Number.NaN));
  const model = modelOf(
    grid,
    {
      co: centre,
      ci: centre,
      ao: (s) => half(s) + grow,
      ai: (s) => canal * (half(s) + grow),
      ho: () => height,
      hi: () => Math.min(0.95, Math.max(0.15, hi / height)) * height,
      b0: beside,
      b1: () => tilt,
    },
    [Math.log(blur), value('imaging.blur.tail-share'), value('imaging.compression')],
    believedGain(unitsPerLog, height),
  );
  return { model, width, height, grow, blurPx: blur, beside };
}

/** Outer shadow, canal's shadow, level and slope fitted to one block's profile. */
function blockFit(rough: RoughBone, k: number, grow: number, canal: number, blur: number): BlockFit | null {
  const p = rough.profiles[k]!;
  const a = rough.halfWidth[k]! + grow;
  const c = rough.centre[k]!;
  const outer = blurredHalfEllipse(a, blur);
  const inner = blurredHalfEllipse(canal * a, blur);
  const reach = (1 + BESIDE.halfWidths) * a + BESIDE.px;
  const out = new Float64Array(4);
  const normal = new Float64Array(16);
  const pull = new Float64Array(4);
  const rows: { j: [number, number, number, number]; v: number }[] = [];
  for (
    let i = Math.max(0, Math.ceil(c - reach + rough.reach));
    i <= Math.min(p.length - 1, c + reach + rough.reach);
    i++
  ) {
    const v = p[i]!;
    if (Number.isNaN(v)) continue;
    const x = i - rough.reach - c;
    shadowAt(outer, x, out);
    const g = out[0]!;
    shadowAt(inner, x, out);
    const j: [number, number, number, number] = [g, -out[0]!, 1, x / a];
    rows.push({ j, v });
    for (let m = 0; m < 4; m++) {
      pull[m]! += j[m]! * v;
      for (let n = 0; n < 4; n++) normal[4 * m + n]! += j[m]! * j[n]!;
    }
  }
  for (let m = 0; m < 4; m++) normal[5 * m]! *= 1 + 1e-6;
  const l = rows.length > 12 ? cholesky(normal, 4) : null;
  if (!l) return null;
  const [ho, hi, b0, b1] = solveWith(l, 4, pull) as unknown as [number, number, number, number];
  const left =
    rows.reduce((sum, { j, v }) => sum + (v - (j[0] * ho + j[1] * hi + b0 + j[3] * b1)) ** 2, 0) / rows.length;
  // a shadow that is not there, or a canal with more bone in it than its wall, is no start
  if (!(ho > 0)) return null;
  return { ho, hi, b0, b1, cost: Math.sqrt(left) * (hi < 0 ? 1.5 : 1) };
}

/** Linear between medians of three neighbours, level beyond the ends; values that are not there (NaN) do not count. */
export function smoothed(s: readonly number[], v: readonly number[]): (s: number) => number {
  const known = s.flatMap((at, i) => (Number.isNaN(v[i]!) ? [] : [{ at, v: v[i]! }]));
  const m = known.map((_, i) => median(known.slice(Math.max(0, i - 1), i + 2).map((k) => k.v)));
  return (at) => {
    const k = known.findIndex((q) => q.at > at);
    if (k < 0) return m[m.length - 1] ?? Number.NaN;
    if (k === 0) return m[0]!;
    const t = (at - known[k - 1]!.at) / (known[k]!.at - known[k - 1]!.at);
    return m[k - 1]! * (1 - t) + m[k]! * t;
  };
}

/** The usual shadow of a long bone in natural logarithms of the beam, and how far (in logarithms of it) that is to be trusted. */
const USUAL_LOGS = { value: 0.45, logSd: 0.5, noiseLogSd: 0.25 };

/** Values to one natural logarithm: what the film's noise shows, tempered by what a bone's shadow usually is. */
function believedGain(fromNoise: number | null, height: number): number {
  const usual = height / USUAL_LOGS.value;
  if (fromNoise === null) return usual;
  if (fromNoise === 1) return 1;
  const w = USUAL_LOGS.noiseLogSd ** -2 / (USUAL_LOGS.noiseLogSd ** -2 + USUAL_LOGS.logSd ** -2);
  return Math.exp(w * Math.log(fromNoise) + (1 - w) * Math.log(usual));
}
