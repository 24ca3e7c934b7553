/** One fragment from rough clicks to a fitted bone about its own straight axis. All in pixels. */
import { value } from '@bonewright/evidence';
import type { SegmentClicks } from '../model/trace.ts';
import type { Attenuation } from './attenuation.ts';
import { type BoneModel, globalsOf, indexOf, PARTS, partAt, partsAt, unknownsOf } from './bone-model.ts';
import { type CellRow, cellsOf } from './cells.ts';
import { findBone } from './find.ts';
import { type FitResult, fitBone } from './fit.ts';
import { coordinatesOf, type LineFrame, lineFrame, pointAt } from './frame.ts';
import { type Honesty, honestyOf } from './honesty.ts';
import { basisAt } from './spline.ts';
import { median, startModel } from './start.ts';
import { type Tails, tailsOf } from './tails.ts';

export interface FittedSegment {
  readonly frame: LineFrame;
  readonly fit: FitResult;
  readonly rows: readonly CellRow[];
  readonly width: number;
  readonly height: number;
  readonly noise: number;
  readonly honesty: Honesty;
  /** Why no edge can be read at s, or null: metal within reach. */
  blockedAt(s: number, mmPerPixel: number): string | null;
  /** Why the fit does not hold at s, or null. */
  lostAt(s: number): string | null;
}

/** Search failed: why, in words. */
export interface NoBone {
  readonly why: string;
}

/** How far beside the bone the fit looks: half-widths and pixels. */
const BESIDE = { halfWidths: 0.35, px: 4 };
/** Rows of cells: share of the width, and at least this many pixels. */
const ROW = { widths: 0.08, leastPx: 2 };

export function fitSegment(film: Attenuation, clicks: SegmentClicks): FittedSegment | NoBone {
  let frame = lineFrame(clicks.from, clicks.to);
  const rough = findBone(film, frame);
  if (!rough) return { why: 'no pair of edges stands out near the line' };
  const start = startModel(rough, 0, frame.lengthPx, film.unitsPerLog);
  if (!start) return { why: 'nothing near the line attenuates more than what lies beside it' };
  let { model, width, height } = start;
  const noise0 = pixelNoise(film, frame, width);
  const metal = metalMask(film, frame, width, (s) => start.beside(s) + METAL_HEIGHTS * height + 6 * noise0);
  const noise = noise0;
  const tails = tailsOf(
    rough,
    start.grow,
    height,
    start.blurPx,
    (s) => BESIDE.halfWidths * partAt(start.model, 'ao', s) + BESIDE.px,
  );
  let rows: readonly CellRow[] = [];
  let fit: FitResult | null = null;
  for (let pass = 0; pass < 3; pass++) {
    rows = rowsFor(film, frame, model, width, metal, tails);
    fit = fitBone(model, rows, {
      noise,
      misfit: (pass === 0 ? 0.03 : 0.006) * height,
      width,
      height,
      stiffness: pass === 0 ? 0.3 : 1,
      steps: pass === 0 ? 25 : 15,
    });
    model = fit.model;
    if (pass < 2) {
      const line = axisLine(frame, model, clicks);
      ({ frame, model } = reframed(frame, model, line));
      width = 2 * median(rows.map((r) => partAt(model, 'ao', r.s)));
      height = median(rows.map((r) => partAt(model, 'ho', r.s)));
    }
  }
  const done = fit!;
  const finalFrame = frame;
  const finalWidth = width;
  return {
    frame,
    fit: done,
    rows,
    width,
    height,
    noise,
    honesty: honestyOf(rows, done.residuals, done.rowChi),
    blockedAt: (s, mm) =>
      metalNear(film, finalFrame, done.model, metal, s, value('imaging.metal.clearance') / mm)
        ? 'metal lies over the bone here'
        : null,
    lostAt: (s) => lostAt(done, rows, s, finalWidth),
  };
}

function rowsFor(
  film: Attenuation,
  frame: LineFrame,
  model: BoneModel,
  width: number,
  metal: Uint8Array,
  tails: Tails,
): readonly CellRow[] {
  return cellsOf(
    film,
    frame,
    {
      from: 0,
      to: frame.lengthPx,
      rowHeight: Math.max(ROW.leastPx, ROW.widths * width),
      centre: (s) => partAt(model, 'co', s),
      reach: (s, side) => partAt(model, 'ao', s) + tails.at(s, side),
    },
    (i) => metal[i] === 0,
  );
}

/** Least-squares line through the midpoints of the outer silhouette over the length of `frame`. */
export function midline(
  model: BoneModel,
  lengthPx: number,
): { offset: number; slope: number; weights: (s: number) => [number, number] } {
  const n = 60;
  let sum = 0;
  let moment = 0;
  let square = 0;
  const mean = lengthPx / 2;
  for (let i = 0; i < n; i++) {
    const s = ((i + 0.5) / n) * lengthPx;
    const x = partAt(model, 'co', s);
    sum += x;
    moment += (s - mean) * x;
    square += (s - mean) ** 2;
  }
  const slope = moment / square;
  return { offset: sum / n - slope * mean, slope, weights: (s) => [1 / n, (s - mean) / square] };
}

function axisLine(frame: LineFrame, model: BoneModel, clicks: SegmentClicks): LineFrame {
  const line = midline(model, frame.lengthPx);
  const a = pointAt(frame, 0, line.offset);
  const b = pointAt(frame, frame.lengthPx, line.offset + line.slope * frame.lengthPx);
  const straight = lineFrame(a, b);
  const from = pointAt(straight, coordinatesOf(straight, clicks.from)[0], 0);
  const to = pointAt(straight, coordinatesOf(straight, clicks.to)[0], 0);
  return lineFrame(from, to);
}

/** The same bone described from another line. */
function reframed(old: LineFrame, model: BoneModel, next: LineFrame): { frame: LineFrame; model: BoneModel } {
  const grid = { ...model.grid, spacing: next.lengthPx / (model.grid.count - 3) };
  const c = new Float64Array(unknownsOf(grid));
  const k = grid.count;
  for (let i = 0; i < k; i++) {
    const s = (i - 1) * grid.spacing;
    const [os] = coordinatesOf(old, pointAt(next, s, 0));
    const within = Math.min(old.lengthPx, Math.max(0, os));
    const parts = partsAt(model, within);
    const shift = coordinatesOf(old, pointAt(next, s, 0))[1];
    for (let p = 0; p < PARTS.length; p++) c[indexOf(p, i)] = parts[p]!;
    c[indexOf(PARTS.indexOf('co'), i)]! -= shift;
    c[indexOf(PARTS.indexOf('ci'), i)]! -= shift;
  }
  c.set(globalsOf(model), PARTS.length * k);
  return { frame: next, model: { ...model, grid, origin: 0, c } };
}

/** Noise of a pixel, from differences of neighbours along the line: median, so that edges do not count. */
function pixelNoise(film: Attenuation, frame: LineFrame, width: number): number {
  const d: number[] = [];
  const half = Math.ceil(0.8 * width);
  for (let s = 0; s < frame.lengthPx; s += 2) {
    for (let x = -half; x <= half; x += 3) {
      const p = pointAt(frame, s, x);
      const i = Math.round(p[1]) * film.cols + Math.round(p[0]);
      const a = film.values[i];
      const b = film.values[i + film.cols];
      if (a !== undefined && b !== undefined) d.push(Math.abs(a - b));
    }
  }
  return Math.max(1e-9, (1.4826 * median(d)) / Math.SQRT2);
}

/** Metal over the bone or beside it within `clear` pixels of the station. */
function metalNear(
  film: Attenuation,
  frame: LineFrame,
  model: BoneModel,
  metal: Uint8Array,
  s: number,
  clear: number,
): boolean {
  const reach = Math.max(1, clear - METAL_RIM_PX);
  for (let ds = -reach; ds <= reach; ds += 1) {
    const at = Math.min(frame.lengthPx, Math.max(0, s + ds));
    const co = partAt(model, 'co', at);
    const half = partAt(model, 'ao', at) + Math.max(0, reach - METAL_RIM_PX);
    for (let x = -half; x <= half; x += 1) {
      const p = pointAt(frame, s + ds, co + x);
      const c = Math.round(p[0]);
      const r = Math.round(p[1]);
      if (c >= 0 && r >= 0 && c < film.cols && r < film.rows && metal[r * film.cols + c]) return true;
    }
  }
  return false;
}

/** The model does not hold where the rows about s misfit it several times over. */
function lostAt(fit: FitResult, rows: readonly CellRow[], s: number, width: number): string | null {
  const near = rows
    .map((r, i) => [Math.abs(r.s - s), fit.rowChi[i]!, r.x.length] as const)
    .filter((r) => r[0] < 0.1 * width);
  if (near.length === 0) return 'the film ends here';
  const chi = near.reduce((m, r) => m + r[1], 0) / near.length;
  return chi > LOST_CHI ? 'the shadow here is not that of a bone' : null;
}
const LOST_CHI = 2.2;
const METAL_RIM_PX = 4;
/** Metal is what attenuates this many times more than bone. */
const METAL_HEIGHTS = 2.2;

/** Pixels above the threshold near the line, with a rim of what the blur carries over. */
function metalMask(film: Attenuation, frame: LineFrame, width: number, threshold: (s: number) => number): Uint8Array {
  const mask = new Uint8Array(film.values.length);
  const rim = METAL_RIM_PX;
  const half = 1.6 * width;
  const corners = [
    pointAt(frame, 0, -half),
    pointAt(frame, 0, half),
    pointAt(frame, frame.lengthPx, -half),
    pointAt(frame, frame.lengthPx, half),
  ];
  const [c0, c1] = span(
    corners.map((p) => p[0]),
    film.cols,
  );
  const [r0, r1] = span(
    corners.map((p) => p[1]),
    film.rows,
  );
  for (let row = r0; row <= r1; row++) {
    for (let col = c0; col <= c1; col++) {
      const [s, x] = coordinatesOf(frame, [col, row]);
      if (Math.abs(x) > half || film.values[row * film.cols + col]! < threshold(s)) continue;
      for (let dr = -rim; dr <= rim; dr++) {
        for (let dc = -rim; dc <= rim; dc++) {
          const r = row + dr;
          const c = col + dc;
          if (dr * dr + dc * dc <= rim * rim && r >= 0 && c >= 0 && r < film.rows && c < film.cols)
            mask[r * film.cols + c] = 1;
        }
      }
    }
  }
  return mask;
}

function span(values: readonly number[], size: number): [number, number] {
  return [Math.max(0, Math.floor(Math.min(...values)) - 6), Math.min(size - 1, Math.ceil(Math.max(...values)) + 6)];
}

/** Standard deviation of a part at s. */
export function partSd(fit: FitResult, part: (typeof PARTS)[number], s: number): number {
  const { grid, origin } = fit.model;
  const { first, w } = basisAt(grid, s - origin);
  const v = new Float64Array(unknownsOf(grid));
  for (let k = 0; k < 4; k++) v[indexOf(PARTS.indexOf(part), first + k)] = w[k]!;
  return Math.sqrt(fit.covariance(v, v));
}
