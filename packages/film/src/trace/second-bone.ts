/**
 * Looks for a second bone (fibula, ulna) beside or over the one that is measured: in each block the slender shadow that
 * explains most of what the first bone leaves, and of all chains of such shadows the one that runs smoothly.
 */
import type { RoughBone } from './find.ts';
import { blurredHalfEllipse, shadowAt } from './half-ellipse.ts';
import { type BoneModel, blurOf, PART, partsAt } from './layout.ts';
import { median, smoothed } from './start.ts';

/** A second bone by s, in pixels and attenuation; where it is not, its height is 0. */
export interface SecondBone {
  centre(s: number): number;
  halfWidth(s: number): number;
  height(s: number): number;
}

/** Half-widths tried, in half-widths of the first bone. */
const HALVES = [0.12, 0.17, 0.24, 0.34, 0.5] as const;
/** Centres tried: out to this many half-widths, in steps of that many. */
const CENTRES = { out: 1.8, step: 0.08 };
/** Least and greatest height, in heights of the first bone's shadow. */
const HEIGHTS = { least: 0.06, most: 1.3 };
/** Gain in log likelihood that a second bone must bring in a block, that beginning or ending costs, and moving by a step. */
const COST = { present: 4, change: 6, move: 0.6 };
/** Blocks that must show it. */
const LEAST_BLOCKS = 3;
/** Nearer than this many blurs beside the first bone it must be in the model; farther off it is left out of the band. */
const NEAR_BLURS = 3.5;
/** It must show this many blurs outside the first bone's silhouette: what lies within may be the canal's own shape. */
const OUTSIDE_BLURS = 1.5;

interface Candidate {
  readonly c: number;
  readonly a: number;
}

/** The second bone that touches or overlaps the first, if the blocks show one. `noise` is that of a block's profile. */
export function findSecond(rough: RoughBone, model: BoneModel, noise: number): SecondBone | null {
  const ao = median(rough.s.map((s) => partsAt(model, s)[PART.ao]!));
  const step = Math.max(1, CENTRES.step * ao);
  const count = 2 * Math.floor((CENTRES.out * ao) / step) + 1;
  const candidates: Candidate[] = HALVES.flatMap((h) =>
    Array.from({ length: count }, (_, i) => ({ c: (i - (count - 1) / 2) * step, a: h * ao })),
  );
  const blocks = rough.s.map((_, k) => blockGains(rough, k, model, candidates, noise));
  const chain = bestChain(
    blocks.map((b) => b.gain),
    count,
  );
  const shown = chain.flatMap((i, k) => (i >= 0 ? [{ k, ...candidates[i]!, h: blocks[k]!.height[i]! }] : []));
  const blur = blurOf(model);
  const touching = shown.filter(({ c, a }) => Math.abs(c) - a - ao < NEAR_BLURS * blur);
  const outside = shown.filter(({ c, a }) => Math.abs(c) + a > ao + OUTSIDE_BLURS * blur);
  if (shown.length < LEAST_BLOCKS || touching.length === 0 || outside.length < shown.length / 2) return null;
  const at = shown.map(({ k }) => rough.s[k]!);
  const offset = smoothed(
    at,
    shown.map(({ c }) => c),
  );
  const half = median(shown.map(({ a }) => a));
  const present = new Map(shown.map(({ k, h }) => [k, h]));
  return {
    centre: (s) => offset(s) + partsAt(model, s)[PART.co]!,
    halfWidth: () => half,
    height: smoothed(
      rough.s,
      rough.s.map((_, k) => present.get(k) ?? 0),
    ),
  };
}

/** For each candidate what it gains in one block over the first bone alone, and its height. */
function blockGains(rough: RoughBone, k: number, model: BoneModel, candidates: readonly Candidate[], noise: number) {
  const p = partsAt(model, rough.s[k]!);
  const co = p[PART.co]!;
  const ao = p[PART.ao]!;
  const blur = blurOf(model);
  const profile = rough.profiles[k]!;
  const [left, right] = ([-1, 1] as const).map((side) => fleshReach(profile, rough.reach, co, ao, side));
  const x: number[] = [];
  const v: number[] = [];
  for (
    let i = Math.max(0, Math.ceil(co - left! + rough.reach));
    i <= Math.min(profile.length - 1, co + right! + rough.reach);
    i++
  ) {
    if (Number.isNaN(profile[i]!)) continue;
    x.push(i - rough.reach);
    v.push(profile[i]!);
  }
  const gain = new Float64Array(candidates.length);
  const height = new Float64Array(candidates.length);
  const outer = blurredHalfEllipse(ao, blur);
  const canal = blurredHalfEllipse(p[PART.ai]!, blur);
  const out = new Float64Array(4);
  const shadow = (b: typeof outer, d: number) => {
    shadowAt(b, d, out);
    return out[0]!;
  };
  const basis = orthonormal([
    x.map((q) => shadow(outer, q - co)),
    x.map((q) => shadow(canal, q - p[PART.ci]!)),
    x.map(() => 1),
    x.map((q) => (q - co) / ao),
    x.map((q) => ((q - co) / ao) ** 2),
  ]);
  const rest = without(v, basis);
  const ho = p[PART.ho]!;
  const variance = noise * noise + (0.01 * ho) ** 2;
  let size = -1;
  let table = outer;
  for (const [i, { c, a }] of candidates.entries()) {
    if (c - a < -left! || c + a > right!) continue;
    if (a !== size) {
      table = blurredHalfEllipse(a, blur);
      size = a;
    }
    const g = x.map((q) => shadow(table, q - co - c));
    const own = dot(g, g) - basis.reduce((s, b) => s + dot(b, g) ** 2, 0);
    if (own < 1e-3 * a) continue;
    const h = dot(g, rest) / own;
    if (h < HEIGHTS.least * ho || h > HEIGHTS.most * ho) continue;
    gain[i] = (h * h * own) / (2 * variance);
    height[i] = h;
  }
  return { gain, height };
}

/**
 * How far from the bone's middle its limb's flesh may be taken as smooth: most of the way to the skin, where the profile
 * falls halfway from the level beside the bone to the least that it shows.
 */
function fleshReach(profile: Float64Array, middle: number, co: number, ao: number, side: 1 | -1): number {
  const most = (CENTRES.out + 0.25) * ao;
  const at = (d: number) => profile[Math.round(co + side * d) + middle] ?? Number.NaN;
  const beside = median([at(ao + 2), at(ao + 3), at(ao + 4)]);
  const air = Math.min(...profile.filter((v) => !Number.isNaN(v)));
  let skin = ao;
  for (let d = ao; d <= most / SHARE_TO_SKIN; d++) if (at(d) > (beside + air) / 2) skin = d;
  return Math.min(most, ao + SHARE_TO_SKIN * (skin - ao));
}
const SHARE_TO_SKIN = 0.65;

const dot = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

/** v less its parts along the basis. */
function without(v: readonly number[], basis: readonly (readonly number[])[]): number[] {
  let rest = [...v];
  for (const b of basis) {
    const d = dot(b, rest);
    rest = rest.map((r, i) => r - d * b[i]!);
  }
  return rest;
}

function orthonormal(vectors: readonly number[][]): number[][] {
  const basis: number[][] = [];
  for (const v of vectors) {
    const rest = without(v, basis);
    const n = Math.sqrt(dot(rest, rest));
    if (n > 1e-9) basis.push(rest.map((r) => r / n));
  }
  return basis;
}

/** Index of the candidate in each block, -1 for none: the smooth chain of the greatest gain. */
function bestChain(gains: readonly Float64Array[], count: number): number[] {
  const n = gains[0]?.length ?? 0;
  const from: Int32Array[] = [];
  let last = new Float64Array(n + 1);
  for (const [k, gain] of gains.entries()) {
    const now = new Float64Array(n + 1);
    const came = new Int32Array(n + 1);
    const top = last.subarray(0, n).reduce((best, v, i) => (v > last[best]! ? i : best), 0);
    // the last state is "none"
    const fromPresent = n > 0 ? last[top]! - COST.change : Number.NEGATIVE_INFINITY;
    came[n] = k > 0 && fromPresent > last[n]! ? top : n;
    now[n] = k > 0 ? Math.max(last[n]!, fromPresent) : 0;
    for (let i = 0; i < n; i++) {
      let best = k > 0 ? last[n]! - COST.change : 0;
      let source = n;
      if (k > 0) {
        for (let move = -2; move <= 2; move++) {
          const at = (i % count) + move;
          if (at < 0 || at >= count) continue;
          const q = i + move;
          const v = last[q]! - COST.move * move * move;
          if (v > best) {
            best = v;
            source = q;
          }
        }
      }
      now[i] = best + gain[i]! - COST.present;
      came[i] = source;
    }
    from.push(came);
    last = now;
  }
  let at = last.reduce((best, v, i) => (v > last[best]! ? i : best), n);
  const chain = new Array<number>(gains.length);
  for (let k = gains.length - 1; k >= 0; k--) {
    chain[k] = at === n ? -1 : at;
    at = from[k]![at]!;
  }
  return chain;
}
