/**
 * How far beside the bone the film shows soft tissue only: on each side, by s, up to where a second bone (a rise) or the
 * skin (a steep fall) begins. What lies beyond says nothing about this bone and would bend its background.
 */
import type { RoughBone } from './find.ts';
import { median, smoothed } from './start.ts';

/** Distances in pixels from the bone's edge, at most `most`. */
export interface Tails {
  /** Another bone begins within reach over much of the length. */
  readonly meetsBone: boolean;
  /** At s, on the side of falling x (-1) or rising x (1). */
  at(s: number, side: 1 | -1): number;
}

/** A rise over four pixels counts from this share of the bone's shadow, a fall from that one. */
const RISE = 0.09;
const FALL = 0.14;
/** ... and from this many times the profile's own noise. */
const NOISES = 3.5;
/** Pixels kept between the last cell and where the change is seen to begin. */
const BACK_PX = 2.5;
const LEAST_PX = 2;

/** Share of the blocks. */
const MUCH = 0.2;

export function tailsOf(
  rough: RoughBone,
  grow: number,
  height: number,
  blurPx: number,
  most: (s: number) => number,
): Tails {
  const sides = ([-1, 1] as const).map((side) => {
    const found = rough.s.map((s, k) => tailOf(rough, k, side, grow, height, blurPx, most(s)));
    // the least of three neighbours: an overlap does not end at a block's end
    const held = found.map((_, k) => Math.min(...found.slice(Math.max(0, k - 1), k + 2).map((f) => f.px)));
    return { reach: smoothed(rough.s, held), bones: found.filter((f) => f.isBone).length / found.length };
  });
  return {
    meetsBone: sides.some(({ bones }) => bones > MUCH),
    at: (s, side) => Math.max(LEAST_PX, Math.min(most(s), sides[side === -1 ? 0 : 1]!.reach(s))),
  };
}

function tailOf(
  rough: RoughBone,
  k: number,
  side: 1 | -1,
  grow: number,
  height: number,
  blurPx: number,
  most: number,
): { readonly px: number; readonly isBone: boolean } {
  // three neighbouring blocks, laid edge on edge, share their noise
  const near = [k - 1, k, k + 1].filter((i) => rough.profiles[i]);
  const at = (d: number) => {
    const values = near.map((i) => {
      const edge = rough.centre[i]! + side * (rough.halfWidth[i]! + grow);
      return rough.profiles[i]![Math.round(edge + side * d) + rough.reach] ?? Number.NaN;
    });
    return values.reduce((sum, v) => sum + v, 0) / values.length;
  };
  const noise = noiseOf(rough.profiles[k]!) / Math.sqrt(near.length);
  const rise = (d: number) => (at(d + 2) + at(d + 1) - at(d - 1) - at(d - 2)) / 2;
  const up = Math.max(RISE * height, NOISES * noise);
  const down = Math.max(FALL * height, NOISES * noise);
  for (let d = 0; d <= most + 2; d++) {
    const r = rise(d);
    if (Number.isNaN(r)) return { px: d > 3 ? d - 2 : most, isBone: false };
    if (r > up || (d > 3 * blurPx + 2 && r < -down)) return { px: d - BACK_PX, isBone: r > up };
  }
  return { px: most, isBone: false };
}

/** Noise of a profile's values, from differences of neighbours. */
function noiseOf(p: Float64Array): number {
  return (median(Array.from({ length: p.length - 1 }, (_, i) => Math.abs(p[i + 1]! - p[i]!))) * 1.4826) / Math.SQRT2;
}
