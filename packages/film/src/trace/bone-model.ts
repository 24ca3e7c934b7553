/**
 * What a fragment is for the fit: functions of s as splines, and what the film shows for them. At s the film across is
 *   b0 + b1 u + b2 u^2 + m - k m^2 / Ho,   m = Ho f((x - co)/ao) - Hi f((x - ci)/ai),   u = (x - co)/ao,
 * with f(t) = sqrt(1 - t^2) blurred by a Gaussian and a faint wider one: the shadow of any elliptical section,
 * whichever way it is turned, with a canal off its middle, over soft tissue; k is what scatter and beam hardening
 * take from the tops of the shadow.
 */
import { value as evidence } from '@bonewright/evidence';
import { blurDeficit } from './beam-blur.ts';
import { type BlurredHalfEllipse, blurredHalfEllipse, shadowAt } from './half-ellipse.ts';
import { basisAt, type SplineGrid } from './spline.ts';

/** The functions of s, in this order; lengths in pixels, the others in attenuation. */
export const PARTS = ['co', 'ao', 'ci', 'ai', 'ho', 'hi', 'b0', 'b1', 'b2'] as const;
export type Part = (typeof PARTS)[number];
export const PART_COUNT = PARTS.length;
/** What one film has in common: blur (logarithm of pixels), share of the blur's wide tail, compression of the values. */
export const GLOBALS = ['logBlur', 'tail', 'compression'] as const;
export const GLOBAL_COUNT = GLOBALS.length;
/** Derivatives of a row: one for each part and for each global. */
export const ROW_UNKNOWNS = PART_COUNT + GLOBAL_COUNT;

/** Coefficients (see `indexOf`), then the globals. */
export interface BoneModel {
  readonly grid: SplineGrid;
  /** s of the splines' origin. */
  readonly origin: number;
  readonly c: Float64Array;
  /** Values to one natural logarithm of the beam: blur acts on the beam. */
  readonly unitsPerLog: number;
}

export const unknownsOf = (grid: SplineGrid): number => PART_COUNT * grid.count + GLOBAL_COUNT;
export const globalsOf = (m: BoneModel): Float64Array => m.c.subarray(m.c.length - GLOBAL_COUNT);
export const blurOf = (m: BoneModel): number => Math.exp(globalsOf(m)[0]!);

/** Where the coefficient of a part at a knot stands in `c`: knot by knot, so that neighbours along the bone lie together. */
export const indexOf = (part: number, knot: number): number => knot * PART_COUNT + part;

export function partAt(m: BoneModel, part: Part, s: number): number {
  const { first, w } = basisAt(m.grid, s - m.origin);
  const p = PARTS.indexOf(part);
  let sum = 0;
  for (let k = 0; k < 4; k++) sum += w[k]! * m.c[indexOf(p, first + k)]!;
  return sum;
}

/** All nine parts at s. */
export function partsAt(m: BoneModel, s: number): Float64Array {
  const { first, w } = basisAt(m.grid, s - m.origin);
  const out = new Float64Array(PART_COUNT);
  for (let p = 0; p < PART_COUNT; p++) {
    let sum = 0;
    for (let k = 0; k < 4; k++) sum += w[k]! * m.c[indexOf(p, first + k)]!;
    out[p] = sum;
  }
  return out;
}

/** Sds of the blur's core and tail in pixels, a cell's own extent included, and the tail's share. */
export interface TailedKernel {
  readonly core: number;
  readonly wide: number;
  readonly tail: number;
}

/** A half-ellipse blurred by core and tail, with what its derivatives need. */
interface TailedShadow extends TailedKernel {
  readonly coreShadow: BlurredHalfEllipse;
  readonly wideShadow: BlurredHalfEllipse;
  /** d(sigma)/d(logBlur) of core and tail. */
  readonly coreRate: number;
  readonly wideRate: number;
}

function tailedShadow(a: number, blurPx: number, tail: number, smear: number): TailedShadow {
  const wideBlur = evidence('imaging.blur.tail-ratio') * blurPx;
  const core = Math.hypot(blurPx, Math.sqrt(smear));
  const wide = Math.hypot(wideBlur, Math.sqrt(smear));
  return {
    core,
    wide,
    coreShadow: blurredHalfEllipse(a, core),
    wideShadow: blurredHalfEllipse(a, wide),
    coreRate: blurPx ** 2 / core,
    wideRate: wideBlur ** 2 / wide,
    tail,
  };
}

const core = new Float64Array(4);
const wide = new Float64Array(4);

/** Value, slope by x, by a, by logBlur, by tail. */
function tailedAt(t: TailedShadow, x: number, out: Float64Array): void {
  shadowAt(t.coreShadow, x, core);
  shadowAt(t.wideShadow, x, wide);
  for (let k = 0; k < 3; k++) out[k] = core[k]! + t.tail * (wide[k]! - core[k]!);
  out[3] = (1 - t.tail) * core[3]! * t.coreRate + t.tail * wide[3]! * t.wideRate;
  out[4] = wide[0]! - core[0]!;
}

/**
 * The model's values across one row and, if asked, their derivatives (ROW_UNKNOWNS for each x).
 * `smear` is what a cell's own extent adds to the blur, as a variance in pixels squared.
 */
export function rowModel(
  p: Float64Array,
  globals: Float64Array,
  unitsPerLog: number,
  smear: number,
  x: Float64Array,
  value: Float64Array,
  slope: Float64Array | null,
): void {
  const co = p[0]!;
  const ao = p[1]!;
  const ho = p[4]!;
  const hi = p[5]!;
  const b1 = p[7]!;
  const b2 = p[8]!;
  const blurPx = Math.exp(globals[0]!);
  const k = globals[2]! / ho;
  const outer = tailedShadow(ao, blurPx, globals[1]!, smear);
  const canal = tailedShadow(p[3]!, blurPx, globals[1]!, smear);
  const deficit = blurDeficit(p, outer, unitsPerLog);
  const o = new Float64Array(5);
  const q = new Float64Array(5);
  for (let i = 0; i < x.length; i++) {
    const u = (x[i]! - co) / ao;
    tailedAt(outer, x[i]! - co, o);
    tailedAt(canal, x[i]! - p[2]!, q);
    const m = ho * o[0]! - hi * q[0]! + deficit(x[i]!);
    value[i] = p[6]! + (b1 + b2 * u) * u + m - k * m * m;
    if (!slope) continue;
    const f = 1 - 2 * k * m;
    const base = (b1 + 2 * b2 * u) / ao;
    const at = i * ROW_UNKNOWNS;
    slope[at] = -base - f * ho * o[1]!;
    slope[at + 1] = -base * u + f * ho * o[2]!;
    slope[at + 2] = f * hi * q[1]!;
    slope[at + 3] = -f * hi * q[2]!;
    slope[at + 4] = f * o[0]! + (k * m * m) / ho;
    slope[at + 5] = -f * q[0]!;
    slope[at + 6] = 1;
    slope[at + 7] = u;
    slope[at + 8] = u * u;
    slope[at + 9] = f * (ho * o[3]! - hi * q[3]!);
    slope[at + 10] = f * (ho * o[4]! - hi * q[4]!);
    slope[at + 11] = (-m * m) / ho;
  }
}
