/**
 * Finds the bone about a rough line: for each block along it the pair of outer edges (a rise, then a fall) that is
 * strong on both sides, and of all such chains the one that runs smoothly. Only a start for the fit, good to a pixel or two.
 */
import { type Attenuation, sampleAt } from './attenuation.ts';
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
const SMALLEST_HALF_WIDTH_PX = 3;
/** Farthest that the bone's middle may lie from the clicked line, in half-widths: a click's error and the bone's bow. */
const FARTHEST_CENTRE = 0.8;
const BLOCKS = { least: 6, most: 24, pxAtLeast: 6 };

/** The bone nearest to the line; null where no pair of edges stands out. */
export function findBone(film: Attenuation, frame: LineFrame): RoughBone | null {
  const widest = Math.floor(frame.lengthPx / LENGTH_TO_HALF_WIDTH);
  const reach = Math.ceil(widest * (1 + FARTHEST_CENTRE)) + 4;
  const count = Math.max(BLOCKS.least, Math.min(BLOCKS.most, Math.floor(frame.lengthPx / BLOCKS.pxAtLeast)));
  const length = frame.lengthPx / count;
  const s = Array.from({ length: count }, (_, k) => (k + 0.5) * length);
  const profiles = s.map((at) => blockProfile(film, frame, at, length, reach));
  const slopes = profiles.map(slope);
  const cap = strongEdge(slopes);
  if (!(cap > 0)) return null;
  const chain = bestChain(slopes, reach, widest, cap);
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

/** Rise over four pixels, smoothed; 0 off the film. */
function slope(p: Float64Array): Float64Array {
  const out = new Float64Array(p.length);
  for (let i = 2; i + 2 < p.length; i++) {
    const d = (p[i + 2]! + p[i + 1]! - p[i - 1]! - p[i - 2]!) / 2;
    out[i] = Number.isNaN(d) ? 0 : d;
  }
  return out;
}

/** A strong edge of the middle of the band, by the median of the blocks: stronger ones (metal) count as this. */
function strongEdge(slopes: readonly Float64Array[]): number {
  const peaks = slopes.map((p) => p.reduce((m, v) => Math.max(m, Math.abs(v)), 0)).sort((a, b) => a - b);
  return peaks[peaks.length >> 1]!;
}

interface Chain {
  readonly centre: number[];
  readonly halfWidth: number[];
  readonly strength: number;
}

/** Dynamic programme over (left edge, right edge), each moving at most two pixels of the grid from block to block. */
function bestChain(slopes: readonly Float64Array[], reach: number, widest: number, cap: number): Chain | null {
  const step = Math.max(1, Math.round(widest / 60));
  const edges = Math.floor((2 * reach) / step) + 1;
  const position = (i: number) => i * step - reach;
  const best: Float64Array[] = [];
  const from: Int8Array[] = [];
  const allowed = new Uint8Array(edges * edges);
  const prior = new Float64Array(edges * edges);
  for (let l = 0; l < edges; l++) {
    for (let r = l + 1; r < edges; r++) {
      const a = (position(r) - position(l)) / 2;
      const c = Math.abs(position(r) + position(l)) / 2;
      if (a < SMALLEST_HALF_WIDTH_PX || a > widest || c > FARTHEST_CENTRE * a) continue;
      allowed[l * edges + r] = 1;
      prior[l * edges + r] = 0.25 * (c / (FARTHEST_CENTRE * a)) ** 2;
    }
  }
  for (const [k, slopeOf] of slopes.entries()) {
    const rise = new Float64Array(edges);
    const fall = new Float64Array(edges);
    for (let i = 0; i < edges; i++) {
      let up = 0;
      let down = 0;
      for (let q = -(step >> 1); q <= step >> 1; q++) {
        const v = slopeOf[position(i) + reach + q] ?? 0;
        up = Math.max(up, v);
        down = Math.max(down, -v);
      }
      rise[i] = Math.min(1, up / cap);
      fall[i] = Math.min(1, down / cap);
    }
    const now = new Float64Array(edges * edges).fill(-1e9);
    const came = new Int8Array(edges * edges);
    const last = best[k - 1];
    for (let l = 0; l < edges; l++) {
      for (let r = l + 1; r < edges; r++) {
        const at = l * edges + r;
        if (!allowed[at]) continue;
        const own = 0.8 * Math.min(rise[l]!, fall[r]!) + 0.1 * (rise[l]! + fall[r]!) - prior[at]!;
        if (!last) {
          now[at] = own;
          continue;
        }
        let top = -1e9;
        for (let dl = -2; dl <= 2; dl++) {
          for (let dr = -2; dr <= 2; dr++) {
            const ll = l - dl;
            const rr = r - dr;
            if (ll < 0 || rr < 0 || ll >= edges || rr >= edges || !allowed[ll * edges + rr]) continue;
            const v = last[ll * edges + rr]! - 0.02 * (dl * dl + dr * dr);
            if (v > top) {
              top = v;
              came[at] = (dl + 2) * 5 + dr + 2;
            }
          }
        }
        now[at] = top + own;
      }
    }
    best.push(now);
    from.push(came);
  }
  return traceBack(best, from, edges, position);
}

function traceBack(
  best: readonly Float64Array[],
  from: readonly Int8Array[],
  edges: number,
  position: (i: number) => number,
): Chain | null {
  const n = best.length;
  const lastRow = best[n - 1]!;
  let at = 0;
  for (let i = 1; i < lastRow.length; i++) if (lastRow[i]! > lastRow[at]!) at = i;
  if (lastRow[at]! < -1e8) return null;
  const strength = lastRow[at]! / n;
  const centre = new Array<number>(n);
  const halfWidth = new Array<number>(n);
  for (let k = n - 1; k >= 0; k--) {
    const l = Math.floor(at / edges);
    const r = at % edges;
    centre[k] = (position(l) + position(r)) / 2;
    halfWidth[k] = (position(r) - position(l)) / 2;
    const code = from[k]![at]!;
    at = (l - (Math.floor(code / 5) - 2)) * edges + (r - ((code % 5) - 2));
  }
  return { centre, halfWidth, strength };
}
