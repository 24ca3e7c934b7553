/** The normal equations of a fit in progress: cost, gradient, and the matrix inside its envelope. */

import { type Envelope, envelope, factor, solved } from './envelope.ts';
import { type BoneModel, GLOBAL_COUNT, indexOf } from './layout.ts';
import { basisAt, type SplineGrid } from './spline.ts';

export interface System {
  readonly shape: Envelope;
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
  /** Negative log posterior, up to a constant. */
  cost: number;
  /** Adds r^2 / 2, with the slopes of r by the named unknowns (ascending). */
  addSquare(r: number, at: readonly number[], slopes: readonly number[]): void;
  /** Shares one row's matrix (lower triangle) and pull out to the coefficients that count at s. */
  addRow(model: BoneModel, s: number, gram: Float64Array, pull: Float64Array): void;
}

/** Four neighbouring knots couple; the globals couple with everything. */
export function shapeOf(grid: SplineGrid, parts: number): Envelope {
  const local = parts * grid.count;
  return envelope(
    Int32Array.from({ length: local + GLOBAL_COUNT }, (_, i) =>
      i < local ? Math.max(0, Math.floor(i / parts) - 3) * parts : 0,
    ),
  );
}

export function emptySystem(shape: Envelope): System {
  const normal = new Float64Array(shape.size);
  const gradient = new Float64Array(shape.n);
  const { start } = shape;
  return {
    shape,
    normal,
    gradient,
    cost: 0,
    addSquare(r, at, slopes) {
      this.cost += (r * r) / 2;
      for (let a = 0; a < at.length; a++) {
        const i = at[a]!;
        gradient[i]! -= r * slopes[a]!;
        for (let b = 0; b <= a; b++) normal[start[i]! + at[b]!]! += slopes[a]! * slopes[b]!;
      }
    },
    addRow(model, s, gram, pull) {
      const { parts } = model;
      const unknowns = parts + GLOBAL_COUNT;
      const { first, w } = basisAt(model.grid, s);
      const index = new Int32Array(4 * parts + GLOBAL_COUNT);
      const source = new Int32Array(index.length);
      const weight = new Float64Array(index.length);
      let n = 0;
      for (let q = 0; q < 4; q++) {
        for (let p = 0; p < parts; p++, n++) {
          index[n] = indexOf(parts, p, first + q);
          source[n] = p;
          weight[n] = w[q]!;
        }
      }
      for (let g = 0; g < GLOBAL_COUNT; g++, n++) {
        index[n] = model.c.length - GLOBAL_COUNT + g;
        source[n] = parts + g;
        weight[n] = 1;
      }
      for (let a = 0; a < n; a++) {
        const sa = source[a]!;
        const wa = weight[a]!;
        const row = start[index[a]!]!;
        gradient[index[a]!]! += wa * pull[sa]!;
        for (let b = 0; b <= a; b++) {
          const sb = source[b]!;
          const g = sa >= sb ? gram[sa * unknowns + sb]! : gram[sb * unknowns + sa]!;
          normal[row + index[b]!]! += wa * weight[b]! * g;
        }
      }
    },
  };
}

/**
 * The step that the system asks for, its diagonal raised by `damping`; null where it has none.
 * The unknowns in `stopped` step by what is said there, and the others make the best of it.
 */
export function stepOf(
  system: System,
  damping: number,
  stopped: ReadonlyMap<number, number> = new Map(),
): Float64Array | null {
  const { shape } = system;
  const firm = firmed(shape, system.normal, damping);
  const pull = Float64Array.from(system.gradient);
  for (const [i, step] of stopped) {
    const at = shape.start[i]! + i;
    const hold = HOLD * Math.max(firm[at]!, 1);
    firm[at]! += hold;
    pull[i] = hold * step;
  }
  const l = factor(shape, firm);
  return l && solved(shape, l, pull);
}
const HOLD = 1e9;

/** The matrix with its diagonal raised by a share. */
export function firmed(shape: Envelope, normal: Float64Array, share: number): Float64Array {
  const out = Float64Array.from(normal);
  for (let i = 0; i < shape.n; i++) out[shape.start[i]! + i]! *= 1 + share;
  return out;
}
