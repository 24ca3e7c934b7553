/** One fragment from rough clicks to a fitted bone about its own straight axis. All in pixels. */
import { value } from '@bonewright/evidence';
import type { SegmentClicks } from '../model/trace.ts';
import type { Attenuation } from './attenuation.ts';
import { axisOf, reframed } from './axis.ts';
import { type CellRow, cellsOf } from './cells.ts';
import { findBone, METAL_LOGS, type RoughBone } from './find.ts';
import { type FitResult, type FitSetting, fitBone } from './fit.ts';
import { type LineFrame, lineFrame } from './frame.ts';
import { type Honesty, honestyOf } from './honesty.ts';
import {
  ALONE,
  type BoneModel,
  blurOf,
  globalsOf,
  modelOf,
  PARTS,
  type Part,
  partAt,
  WITH_SECOND,
  weightsAt,
} from './layout.ts';
import { METAL_HEIGHTS, type MetalMask, metalMask, metalNear } from './metal.ts';
import { type PixelNoise, pixelNoise } from './noise.ts';
import { type BlurPrior, USUAL_BLUR } from './prior.ts';
import { findSecond, type SecondBone } from './second-bone.ts';
import { median, type Start, startModel } from './start.ts';
import { type Tails, tailsOf } from './tails.ts';

export interface FittedSegment {
  readonly frame: LineFrame;
  readonly fit: FitResult;
  readonly rows: readonly CellRow[];
  readonly width: number;
  readonly height: number;
  readonly noise: PixelNoise;
  /** Misfit of the median row; about 1 where the model holds. */
  readonly chi: number;
  readonly honesty: Honesty;
  /** What else lies beside or over it and bends its shadow. */
  readonly neighbours: { readonly bone: boolean; readonly overlap: boolean; readonly metal: boolean };
  /** Share of the length where cells lie at both outer edges. */
  readonly supportedSpan: number;
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
/** A first stiff fit finds the bone, two more find its walls about its own axis. */
const PASSES = [
  { stiffness: 0.3, misfit: 0.03, steps: 25, rounds: 1 },
  { stiffness: 1, misfit: 0.006, steps: 18, rounds: 2 },
  { stiffness: 1, misfit: 0.006, steps: 18, rounds: 5 },
] as const;
/** Beyond a second bone the fit looks this far, pixels. */
const BEYOND_SECOND_PX = 4;
/** A row's weighted misfit above which it shows no bone. */
const LOST_CHI = 2.2;

export function fitSegment(
  film: Attenuation,
  clicks: SegmentClicks,
  blur: BlurPrior = USUAL_BLUR,
): FittedSegment | NoBone {
  const frame = lineFrame(clicks.from, clicks.to);
  const tried: RoughBone[] = [];
  let best: FittedSegment | NoBone = { why: 'no pair of edges stands out near the line' };
  // where the likeliest pair of edges does not make a bone, the next likeliest may
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const rough = findBone(film, frame, tried);
    if (!rough || (tried[0] && rough.strength < LEAST_STRENGTH * tried[0].strength)) break;
    tried.push(rough);
    const start = startModel(rough, frame.lengthPx, film.unitsPerLog);
    if (!start) {
      if ('why' in best) best = { why: 'nothing near the line attenuates more than what lies beside it' };
      continue;
    }
    const fit = fitFrom(film, clicks, blur, frame, rough, start);
    if ('why' in best || fit.chi < BETTER * best.chi) best = fit;
    if (best.chi < GOOD_CHI) break;
  }
  return 'why' in best ? best : (notABone(best) ?? best);
}

/** What was fitted but is no long bone: no canal shows, or nothing stands out of the noise. */
function notABone(fit: FittedSegment): NoBone | null {
  if (fit.supportedSpan < LEAST_SPAN) return { why: 'too little of this fragment can be read: its edges are hidden' };
  if (fit.height < LEAST_NOISES * fit.noise.sd) return { why: 'nothing near the line stands out of the noise' };
  if (fit.chi > value('imaging.trace.refusal')) return { why: 'the shadow along the line fits no single bone' };
  const { model, covariance } = fit.fit;
  const shown = Array.from({ length: CANAL_PLACES }, (_, i) => ((i + 0.5) / CANAL_PLACES) * fit.frame.lengthPx).filter(
    (s) => {
      const at = weightsAt(model, 'hi', s);
      const depth = partAt(model, 'hi', s);
      return (
        depth > LEAST_CANAL.share * partAt(model, 'ho', s) &&
        depth > LEAST_CANAL.sds * fit.honesty.sdFactor * Math.sqrt(covariance(at, at))
      );
    },
  );
  if (shown.length >= LEAST_CANAL.places * CANAL_PLACES) return null;
  return { why: 'no canal shows along the line: this is not the shaft of a long bone' };
}
const LEAST_NOISES = 2;
/** Share of the fragment's length over which both outer edges must be seen, from first to last and in all. */
const LEAST_SPAN = 0.4;
/** Share of the bone's width that must be seen (not under metal) for a row to count. */
const LEAST_INSIDE = 0.3;
const CANAL_PLACES = 20;
const LEAST_CANAL = { share: 0.12, sds: 4, places: 0.3 };

/** Other pairs of edges are tried while the fit is worse than this, if they are nearly as strong, and taken if clearly better. */
const GOOD_CHI = 1.1;
const ATTEMPTS = 4;
const LEAST_STRENGTH = 0.3;
const BETTER = 0.85;

function fitFrom(
  film: Attenuation,
  clicks: SegmentClicks,
  blur: BlurPrior,
  line: LineFrame,
  rough: RoughBone,
  start: Start,
): FittedSegment {
  const noise = pixelNoise(film, line, start.width);
  const metal = metalMask(film, line, start.width, (s) => start.beside(s) + metalFrom(start, noise.sd));
  const tails = tailsOf(
    rough,
    start.grow,
    start.height,
    start.blurPx,
    (s) => BESIDE.halfWidths * partAt(start.model, 'ao', s) + BESIDE.px,
  );
  let { model, width, height } = start;
  let frame = line;
  let rows: readonly CellRow[] = [];
  let fit: FitResult | null = null;
  for (const [pass, { stiffness, misfit, steps, rounds }] of PASSES.entries()) {
    const setting = { noise, misfit: misfit * height, width, height, stiffness, blur, steps, rounds };
    const all = rowsFor(film, frame, model, width, metal, tails);
    rows = pass < PASSES.length - 1 ? awayFromEnds(all, frame.lengthPx, width) : all;
    fit = fitBone(model, rows, setting);
    if (model.parts === WITH_SECOND && pass === 1 && !earnsItsPlace(fit, rows, setting)) {
      model = without(model);
      rows = awayFromEnds(rowsFor(film, frame, model, width, metal, tails), frame.lengthPx, width);
      fit = fitBone(model, rows, setting);
    }
    model = fit.model;
    if (pass === PASSES.length - 1) break;
    if (pass === 0) {
      const second = findSecond(rough, model, noise.sd / Math.sqrt(BLOCK_ROWS));
      if (second) model = withSecond(model, second);
    }
    const next = axisOf(frame, model, clicks);
    model = reframed(frame, model, next);
    frame = next;
    width = 2 * median(rows.map((r) => partAt(model, 'ao', r.s)));
    height = median(rows.map((r) => partAt(model, 'ho', r.s)));
  }
  const done = fit!;
  return {
    frame,
    fit: done,
    rows,
    width,
    height,
    noise,
    chi: median(done.rowChi),
    supportedSpan: supportedSpan(done.model, rows),
    neighbours: {
      bone: done.model.parts === WITH_SECOND || tails.meetsBone,
      overlap: overlapShare(done.model, rows) > MUCH_OVERLAP,
      metal: metal.includes(1),
    },
    honesty: honestyOf(rows, done.residuals, done.rowChi),
    blockedAt: (s, mm) =>
      metalNear(film, frame, done.model, metal, s, value('imaging.metal.clearance') / mm)
        ? 'metal lies over the bone here'
        : null,
    lostAt: (s) => lostAt(done, rows, s, width),
  };
}

/** How far above the flesh beside the bone metal begins: many times the bone's shadow, or what no bone reaches. */
function metalFrom(start: Start, noise: number): number {
  return Math.min(METAL_HEIGHTS * start.height + 6 * noise, METAL_LOGS * start.model.unitsPerLog);
}

/** Rows that a block's median profile is worth. */
const BLOCK_ROWS = 6;

/** Rows well away from the clicked ends, where the fracture's edge or a joint may already begin; the last fit judges those. */
function awayFromEnds(rows: readonly CellRow[], lengthPx: number, width: number): readonly CellRow[] {
  const margin = Math.min(END_WIDTHS * width, END_SHARE * lengthPx);
  return rows.filter((r) => r.s > margin && r.s < lengthPx - margin);
}
const END_WIDTHS = 0.3;
const END_SHARE = 0.1;

/** A second bone stays where the same cells are much less likely without it. */
function earnsItsPlace(fit: FitResult, rows: readonly CellRow[], setting: FitSetting): boolean {
  return fitBone(without(fit.model), rows, { ...setting, rounds: 1 }).cost - fit.cost > SECOND_GAIN;
}
const SECOND_GAIN = 60;

function without(model: BoneModel): BoneModel {
  const functions: Partial<Record<Part, (s: number) => number>> = {};
  for (const part of PARTS.slice(0, ALONE)) functions[part] = (s) => partAt(model, part, s);
  return modelOf(model.grid, functions, globalsOf(model), model.unitsPerLog);
}

function withSecond(model: BoneModel, second: SecondBone): BoneModel {
  const functions: Partial<Record<Part, (s: number) => number>> = {};
  for (const part of PARTS.slice(0, model.parts)) functions[part] = (s) => partAt(model, part, s);
  return modelOf(
    model.grid,
    { ...functions, c2: second.centre, a2: second.halfWidth, h2: second.height, i2: (s) => 0.2 * second.height(s) },
    globalsOf(model),
    model.unitsPerLog,
  );
}

function rowsFor(
  film: Attenuation,
  frame: LineFrame,
  model: BoneModel,
  width: number,
  metal: MetalMask,
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
      reach: (s, side) => Math.max(partAt(model, 'ao', s) + tails.at(s, side), secondReach(model, s, side)),
    },
    (i) => metal[i] === 0,
  );
}

/** How far out the second bone's far edge lies, with a little of what is beyond it; 0 where there is none. */
function secondReach(model: BoneModel, s: number, side: 1 | -1): number {
  if (model.parts < WITH_SECOND || !(partAt(model, 'h2', s) > 0)) return 0;
  const off = partAt(model, 'c2', s) - partAt(model, 'co', s);
  return Math.sign(off) === side ? Math.abs(off) + partAt(model, 'a2', s) + BEYOND_SECOND_PX : 0;
}

/** Share of the rows in which a second bone's shadow crosses the first one's edge. */
function overlapShare(model: BoneModel, rows: readonly CellRow[]): number {
  if (model.parts < WITH_SECOND) return 0;
  const crossed = rows.filter(({ s }) => {
    const off = Math.abs(partAt(model, 'c2', s) - partAt(model, 'co', s));
    return partAt(model, 'h2', s) > 0 && off - partAt(model, 'a2', s) < partAt(model, 'ao', s);
  });
  return crossed.length / rows.length;
}
const MUCH_OVERLAP = 0.15;

/** Share of the rows that have cells at both outer edges and enough of the bone between them. */
function supportedSpan(model: BoneModel, rows: readonly CellRow[]): number {
  const near = 1.5 * blurOf(model) + 1;
  const seen = rows.filter((row) => {
    const co = partAt(model, 'co', row.s);
    const ao = partAt(model, 'ao', row.s);
    const inside = row.x.filter((x) => Math.abs(x - co) < ao).length;
    return (
      inside > LEAST_INSIDE * 2 * ao && [co - ao, co + ao].every((edge) => row.x.some((x) => Math.abs(x - edge) < near))
    );
  });
  return seen.length / rows.length;
}

/** The model does not hold where the rows about s misfit it several times over. */
function lostAt(fit: FitResult, rows: readonly CellRow[], s: number, width: number): string | null {
  const near = rows.flatMap((r, i) => (Math.abs(r.s - s) < 0.1 * width ? [fit.rowChi[i]!] : []));
  if (near.length === 0) return 'the film ends here';
  const chi = near.reduce((m, c) => m + c, 0) / near.length;
  return chi > LOST_CHI ? 'the shadow here is not that of a bone' : null;
}
