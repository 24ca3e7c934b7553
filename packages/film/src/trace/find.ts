/**
 * Finds the bone about a rough line: for each block along it the pair of outer edges (a rise, then a fall) that is
 * strong on both sides, and of all such chains the one that runs smoothly. Only a start for the fit, good to a pixel or two.
 */
import { type Attenuation, sampleAt } from './attenuation.ts';
import { bestChain, type Chain, FARTHEST_CENTRE } from './edge-chain.ts';
import { type LineFrame, pointAt } from './frame.ts';

/** A first idea of the bone, by blocks along the line; all in pixels. */
export interface RoughBone {
  readonly s: readonly number[];
  readonly centre: readonly number[];
  readonly halfWidth: readonly number[];
  /** Attenuation across each block at x = -reach ... reach, one pixel apart. */
  readonly profiles: readonly Float64Array[];
  readonly reach: number;
  /** How strong both edges stand out of the noise, mean over the blocks. */
  readonly strength: number;
}

/** A fragment is taken to be at least this many times longer than half its width. */
const LENGTH_TO_HALF_WIDTH = 2.4;
const BLOCKS = { least: 6, most: 24, pxAtLeast: 6 };

/** The bone nearest to the line, other than those found before; null where no pair of edges stands out. */
export function findBone(film: Attenuation, frame: LineFrame, others: readonly Chain[] = []): RoughBone | null {
  const widest = Math.floor(frame.lengthPx / LENGTH_TO_HALF_WIDTH);
  const reach = Math.ceil(widest * (1 + FARTHEST_CENTRE)) + 4;
  const count = Math.max(BLOCKS.least, Math.min(BLOCKS.most, Math.floor(frame.lengthPx / BLOCKS.pxAtLeast)));
  const length = frame.lengthPx / count;
  const s = Array.from({ length: count }, (_, k) => (k + 0.5) * length);
  const profiles = s.map((at) => withoutMetal(blockProfile(film, frame, at, length, reach), film.unitsPerLog));
  const slopes = profiles.map(slope);
  const chain = bestChain(slopes, reach, widest, others);
  if (!chain) return null;
  return { s, profiles, reach, ...chain };
}

/** Median along the block, so that a pin that crosses it is not seen. */
function blockProfile(film: Attenuation, frame: LineFrame, at: number, length: number, reach: number): Float64Array {
  const rows = Math.max(5, Math.min(31, Math.round(length) | 1));
  const out = new Float64Array(2 * reach + 1);
  const column: number[] = [];
  for (let i = 0; i < out.length; i++) {
    column.length = 0;
    for (let k = 0; k < rows; k++) {
      const p = pointAt(frame, at + ((k + 0.5) / rows - 0.5) * length, i - reach);
      const v = sampleAt(film, p[0], p[1]);
      if (!Number.isNaN(v)) column.push(v);
    }
    column.sort((a, b) => a - b);
    out[i] = column.length > 0 ? column[column.length >> 1]! : Number.NaN;
  }
  return out;
}

/** Takes out (NaN) what attenuates as no bone of a small animal does, with a rim. Without a gain nothing can be told. */
function withoutMetal(profile: Float64Array, unitsPerLog: number | null): Float64Array {
  if (unitsPerLog === null) return profile;
  const most = METAL_LOGS * unitsPerLog;
  const known = [...profile].filter((v) => !Number.isNaN(v)).sort((a, b) => a - b);
  const low = known[Math.floor(known.length / 5)] ?? 0;
  const flesh = known.filter((v) => v <= low + most);
  const base = flesh[flesh.length >> 1] ?? low;
  const dense = profile.map((v) => (v > base + most ? 1 : 0));
  return profile.map((v, i) =>
    dense.subarray(Math.max(0, i - METAL_RIM_PX), i + METAL_RIM_PX + 1).some((d) => d > 0) ? Number.NaN : v,
  );
}

/** Natural logarithms of the beam that bone over flesh never reaches and steel of a millimetre does. */
export const METAL_LOGS = 1.4;
const METAL_RIM_PX = 4;

/** Rise over four pixels, smoothed; 0 off the film. */
function slope(p: Float64Array): Float64Array {
  const out = new Float64Array(p.length);
  for (let i = 2; i + 2 < p.length; i++) {
    const d = (p[i + 2]! + p[i + 1]! - p[i - 1]! - p[i - 2]!) / 2;
    out[i] = Number.isNaN(d) ? 0 : d;
  }
  return out;
}
