/** A coarse search for a bright straight band of known width about an expected line: offset and slope to a pixel. */
import type { Attenuation } from '../trace/attenuation.ts';
import type { LineFrame } from '../trace/frame.ts';
import { attenuationAbout, quantile } from './metal-signal.ts';

/** Across at the middle of the expected line, and change of it along. */
export interface Band {
  readonly offset: number;
  readonly slope: number;
}

interface Search {
  readonly reachPx: number;
  readonly turnDeg: number;
}

/** Rows looked at, and the share of the line's ends that is left out: the rod may be shorter than expected. */
const ROWS = 60;
const MARGIN = 0.08;
/** Half-width of the band and where it is compared with, in rod widths. */
const CORE = 0.35;
const BESIDE = [0.9, 1.5] as const;
/** This share of the rows may fail: crossings, ends. */
const FAILING = 0.35;
/** Metal exceeds what varies beside it this many times, and the film's noise. */
const ABOVE_SURROUND = 1.5;
const ABOVE_NOISE = 5;

/** Prefix sums of the film across each row, so that a mean over any stretch costs two look-ups. */
interface Rows {
  readonly s: readonly number[];
  readonly sums: readonly Float64Array[];
  readonly fromX: number;
}

export function bandNear(
  film: Attenuation,
  frame: LineFrame,
  widthPx: number,
  search: Search,
): Band | { readonly why: string } {
  const tan = Math.tan((search.turnDeg * Math.PI) / 180);
  const half = search.reachPx + BESIDE[1] * widthPx + (tan * frame.lengthPx) / 2;
  const rows = rowsOf(film, frame, half);
  const slopeStep = 2 / frame.lengthPx;
  let best = { offset: 0, slope: 0, score: Number.NEGATIVE_INFINITY };
  for (let slope = -tan; slope <= tan; slope += slopeStep) {
    for (let offset = -search.reachPx; offset <= search.reachPx; offset += 1) {
      const score = scoreOf(rows, frame, { offset, slope }, widthPx);
      if (score > best.score) best = { offset, slope, score };
    }
  }
  const missing = `nothing bright, straight and about ${widthPx.toFixed(0)} pixels wide lies within ${search.reachPx.toFixed(0)} pixels of its place`;
  if (!Number.isFinite(best.score)) return { why: 'its place lies off the film' };
  return best.score < thresholdOf(rows, frame, best, widthPx) ? { why: missing } : best;
}

function rowsOf(film: Attenuation, frame: LineFrame, half: number): Rows {
  const signal = attenuationAbout(film, frame);
  const n = Math.ceil(2 * half) + 2;
  const s = Array.from({ length: ROWS }, (_, i) => frame.lengthPx * (MARGIN + ((1 - 2 * MARGIN) * (i + 0.5)) / ROWS));
  const sums = s.map((at) => {
    const row = new Float64Array(n + 1);
    for (let i = 0; i < n; i++) row[i + 1] = row[i]! + signal(at, i - half);
    return row;
  });
  return { s, sums, fromX: -half };
}

/** Mean of the samples between two places across; NaN where the film ends. */
function meanOf(sums: Float64Array, fromX: number, low: number, high: number): number {
  const a = Math.max(0, Math.round(low - fromX));
  const b = Math.min(sums.length - 1, Math.max(a + 1, Math.round(high - fromX) + 1));
  return (sums[b]! - sums[a]!) / (b - a);
}

/** By how much the band stands out over the brighter of its two sides, in all but the worst rows. */
function scoreOf(rows: Rows, frame: LineFrame, band: Band, widthPx: number): number {
  const out = rows.s.map((s, i) => {
    const x = band.offset + band.slope * (s - frame.lengthPx / 2);
    const mean = (low: number, high: number) =>
      meanOf(rows.sums[i]!, rows.fromX, x + low * widthPx, x + high * widthPx);
    const core = mean(-CORE, CORE);
    const contrast = core - Math.max(mean(-BESIDE[1], -BESIDE[0]), mean(BESIDE[0], BESIDE[1]));
    return Number.isFinite(contrast) ? contrast : Number.NEGATIVE_INFINITY;
  });
  return quantile(out, FAILING);
}

/** What bone and soft tissue beside the band vary by, and the noise of a pixel. */
function thresholdOf(rows: Rows, frame: LineFrame, band: Band, widthPx: number): number {
  const beside: number[] = [];
  const steps: number[] = [];
  for (const [i, s] of rows.s.entries()) {
    const x = band.offset + band.slope * (s - frame.lengthPx / 2);
    const row = rows.sums[i]!;
    for (let k = 1; k + 1 < row.length; k++) {
      const away = Math.abs(k + rows.fromX - x) / widthPx;
      const here = row[k + 1]! - row[k]!;
      if (!Number.isFinite(here) || away < BESIDE[0]) continue;
      beside.push(here);
      steps.push(Math.abs(here - (row[k]! - row[k - 1]!)));
    }
  }
  const spread = quantile(beside, 3 / 4) - quantile(beside, 1 / 4);
  return Math.max(ABOVE_SURROUND * spread, ABOVE_NOISE * quantile(steps, 1 / 2));
}
