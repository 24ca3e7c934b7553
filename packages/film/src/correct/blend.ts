/**
 * How edges placed by hand carry over to their neighbours: interpolation of the moves with a smooth kernel that reaches
 * one bone width (Wendland's C2 function, published 1995), through every placed edge and zero beyond its reach.
 */
import { cholesky, solveWith } from '../trace/solve.ts';

/** An edge at s moved by so many pixels. */
export interface Move {
  readonly s: number;
  readonly byPx: number;
}

/** At one s: how far the edge moves, and what share of what is known there comes from the hand (1 at a placed edge). */
export interface Blended {
  readonly byPx: number;
  readonly share: number;
}

/** Keeps two edges placed almost at one level solvable. */
const RIDGE = 1e-9;

const kernel = (distance: number, reach: number): number => {
  const r = Math.abs(distance) / reach;
  return r < 1 ? (1 - r) ** 4 * (4 * r + 1) : 0;
};

/** The moves carried over along the bone; `reachPx` is how far a placed edge is felt. Levels of `moves` must differ. */
export function blended(moves: readonly Move[], reachPx: number): (s: number) => Blended {
  const n = moves.length;
  if (n === 0) return () => ({ byPx: 0, share: 0 });
  const matrix = new Float64Array(n * n);
  for (const [i, a] of moves.entries())
    for (const [j, b] of moves.entries()) matrix[i * n + j] = kernel(a.s - b.s, reachPx) + (i === j ? RIDGE : 0);
  const l = cholesky(matrix, n);
  if (!l) throw new Error('correct: two edges placed at one level');
  const weights = solveWith(
    l,
    n,
    Float64Array.from(moves, (m) => m.byPx),
  );
  return (s) => {
    const near = Float64Array.from(moves, (m) => kernel(s - m.s, reachPx));
    if (near.every((v) => v === 0)) return { byPx: 0, share: 0 };
    const known = solveWith(l, n, near);
    const sum = (a: Float64Array) => near.reduce((total, v, i) => total + v * a[i]!, 0);
    return { byPx: sum(weights), share: Math.min(1, Math.max(0, sum(known))) };
  };
}
