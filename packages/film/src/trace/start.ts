/** From the rough chain of edges to a first bone model: heights from the blocks' profiles, lengths from the chain. */
import { value } from '@bonewright/evidence';
import { type BoneModel, PARTS, type Part, unknownsOf } from './bone-model.ts';
import type { RoughBone } from './find.ts';
import { splineGrid } from './spline.ts';

/** Levels of one block's profile, attenuation. */
export interface Levels {
  /** Median beside the bone. */
  readonly beside: number;
  /** Height of the outer shadow over what lies beside. */
  readonly height: number;
  /** Share of it that the canal takes away in the middle. */
  readonly canalShare: number;
}

/** Canal to outer width where nothing is known yet. */
const USUAL_CANAL = 0.65;
/** The steepest slope lies about this far inside the true edge, pixels. */
const EDGE_INSIDE_PX = 1;
/** Knots of the splines, in bone widths apart. */
const KNOTS_APART = 0.25;

/** Middle value; NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = values.filter((v) => !Number.isNaN(v)).sort((a, b) => a - b);
  return sorted.length > 0 ? sorted[sorted.length >> 1]! : Number.NaN;
}

export function levelsOf(rough: RoughBone, k: number): Levels {
  const p = rough.profiles[k]!;
  const c = rough.centre[k]!;
  const a = rough.halfWidth[k]! + EDGE_INSIDE_PX;
  const within = (from: number, to: number): number[] =>
    Array.from(p).filter((_, i) => {
      const u = Math.abs(i - rough.reach - c) / a;
      return u >= from && u <= to;
    });
  const beside = median(within(1 + 2 / a, 1.3 + 4 / a));
  const inside = within(0, 0.95).sort((x, y) => x - y);
  const peak = inside[Math.floor(0.85 * inside.length)] ?? Number.NaN;
  const middle = median(within(0, 0.3));
  const height = (peak - beside) / Math.sqrt(1 - USUAL_CANAL ** 2);
  return { beside, height, canalShare: 1 - (middle - beside) / height };
}

/** The model that the fit starts from. */
export function startModel(rough: RoughBone, from: number, to: number): { model: BoneModel; width: number; height: number } {
  const width = 2 * (median(rough.halfWidth) + EDGE_INSIDE_PX);
  const levels = rough.s.map((_, k) => levelsOf(rough, k));
  const height = median(levels.map((l) => l.height));
  const share = Math.min(0.85, Math.max(0.15, median(levels.map((l) => l.canalShare))));
  const grid = splineGrid(to - from, KNOTS_APART * width);
  const c = new Float64Array(unknownsOf(grid));
  const set = (part: Part, at: (s: number) => number) => {
    for (let i = 0; i < grid.count; i++) {
      c[PARTS.indexOf(part) * grid.count + i] = at(from + (i - 1) * grid.spacing);
    }
  };
  const centre = smoothed(rough.s, rough.centre);
  const half = smoothed(rough.s, rough.halfWidth);
  const beside = smoothed(rough.s, levels.map((l) => l.beside));
  set('co', centre);
  set('ci', centre);
  set('ao', (s) => half(s) + EDGE_INSIDE_PX);
  set('ai', (s) => USUAL_CANAL * (half(s) + EDGE_INSIDE_PX));
  set('ho', () => height);
  set('hi', () => share * height);
  set('b0', beside);
  c[c.length - 2] = value('imaging.blur.tail-share');
  c[c.length - 1] = value('imaging.compression');
  return { model: { grid, origin: from, c }, width, height };
}

/** Linear between medians of three neighbours, level beyond the ends. */
export function smoothed(s: readonly number[], v: readonly number[]): (s: number) => number {
  const m = v.map((_, i) => median(v.slice(Math.max(0, i - 1), i + 2)));
  return (at) => {
    const k = s.findIndex((q) => q > at);
    if (k < 0) return m[m.length - 1]!;
    if (k === 0) return m[0]!;
    const t = (at - s[k - 1]!) / (s[k]! - s[k - 1]!);
    return m[k - 1]! * (1 - t) + m[k]! * t;
  };
}

