/** Uniform cubic B-splines on [0, length]: smooth functions along the bone. */

export interface SplineGrid {
  readonly spacing: number;
  /** Number of coefficients: intervals + 3. */
  readonly count: number;
}

/** A grid whose knots lie about `spacing` apart. */
export function splineGrid(length: number, spacing: number): SplineGrid {
  const intervals = Math.max(2, Math.round(length / spacing));
  return { spacing: length / intervals, count: intervals + 3 };
}

/** The first of the four coefficients that count at s, and their weights. Outside, the end's cubic runs on. */
export function basisAt(grid: SplineGrid, s: number): { first: number; w: [number, number, number, number] } {
  const t = s / grid.spacing;
  const first = Math.min(grid.count - 4, Math.max(0, Math.floor(t)));
  const u = t - first;
  const v = 1 - u;
  return {
    first,
    w: [(v * v * v) / 6, (3 * u * u * u - 6 * u * u + 4) / 6, (3 * v * v * v - 6 * v * v + 4) / 6, (u * u * u) / 6],
  };
}
