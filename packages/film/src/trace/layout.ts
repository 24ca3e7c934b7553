/** What a fragment is for the fit: functions of s as splines, some with what the whole film has in common. */
import { basisAt, type SplineGrid } from './spline.ts';

/**
 * The functions of s, in this order; lengths in pixels, the others in attenuation. Outer shadow (centre co, half-width ao,
 * height ho), canal (ci, ai, hi), background (b0, b1, b2, b3), and where a second bone lies near: its shadow (c2, a2, h2)
 * and the depth i2 of its own canal.
 */
export const PARTS = ['co', 'ao', 'ci', 'ai', 'ho', 'hi', 'b0', 'b1', 'b2', 'b3', 'c2', 'a2', 'h2', 'i2'] as const;
export type Part = (typeof PARTS)[number];
export const PART: Readonly<Record<Part, number>> = Object.fromEntries(PARTS.map((p, i) => [p, i])) as Record<
  Part,
  number
>;
/** Parts of a bone alone, and with a second one beside or over it. */
export const ALONE = 10;
export const WITH_SECOND = PARTS.length;

/** What one film has in common: blur (logarithm of pixels), share of the blur's wide tail, compression of the values. */
export const GLOBALS = ['logBlur', 'tail', 'compression'] as const;
export const GLOBAL_COUNT = GLOBALS.length;

export interface BoneModel {
  readonly grid: SplineGrid;
  /** ALONE or WITH_SECOND. */
  readonly parts: number;
  /** Coefficients (see `indexOf`), then the globals. */
  readonly c: Float64Array;
  /** Values to one natural logarithm of the beam: blur acts on the beam. */
  readonly unitsPerLog: number;
}

export const unknownsOf = (grid: SplineGrid, parts: number): number => parts * grid.count + GLOBAL_COUNT;
export const globalsOf = (m: BoneModel): Float64Array => m.c.subarray(m.c.length - GLOBAL_COUNT);
export const blurOf = (m: BoneModel): number => Math.exp(globalsOf(m)[0]!);

/** Where the coefficient of a part at a knot stands in `c`: knot by knot, so that neighbours along the bone lie together. */
export const indexOf = (parts: number, part: number, knot: number): number => knot * parts + part;

export function partAt(m: BoneModel, part: Part, s: number): number {
  if (PART[part] >= m.parts) return 0;
  const { first, w } = basisAt(m.grid, s);
  let sum = 0;
  for (let k = 0; k < 4; k++) sum += w[k]! * m.c[indexOf(m.parts, PART[part], first + k)]!;
  return sum;
}

/** All parts at s. */
export function partsAt(m: BoneModel, s: number): Float64Array {
  const { first, w } = basisAt(m.grid, s);
  const out = new Float64Array(m.parts);
  for (let p = 0; p < m.parts; p++) {
    let sum = 0;
    for (let k = 0; k < 4; k++) sum += w[k]! * m.c[indexOf(m.parts, p, first + k)]!;
    out[p] = sum;
  }
  return out;
}

/** A model whose parts are the given functions of s, sampled at the knots. */
export function modelOf(
  grid: SplineGrid,
  functions: Readonly<Partial<Record<Part, (s: number) => number>>>,
  globals: ArrayLike<number>,
  unitsPerLog: number,
): BoneModel {
  const parts = functions.c2 ? WITH_SECOND : ALONE;
  const c = new Float64Array(unknownsOf(grid, parts));
  for (let i = 0; i < grid.count; i++) {
    const s = (i - 1) * grid.spacing;
    for (let p = 0; p < parts; p++) c[indexOf(parts, p, i)] = functions[PARTS[p]!]?.(s) ?? 0;
  }
  c.set(globals, c.length - GLOBAL_COUNT);
  return { grid, parts, c, unitsPerLog };
}

/** Weights on `c` that give a part at s, as a vector. */
export function weightsAt(m: BoneModel, part: Part, s: number): Float64Array {
  const { first, w } = basisAt(m.grid, s);
  const v = new Float64Array(m.c.length);
  for (let k = 0; k < 4; k++) v[indexOf(m.parts, PART[part], first + k)] = w[k]!;
  return v;
}
