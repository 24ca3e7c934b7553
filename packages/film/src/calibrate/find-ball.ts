/** Finds the ball about a rough point on it: the patch of dense pixels there, whether whole, and its rough ellipse. */

import type { Pixel } from '../model/trace.ts';
import type { Attenuation } from '../trace/attenuation.ts';

export interface RoughBall {
  readonly centre: Pixel;
  readonly radiusPx: number;
  /** Attenuation well inside and well outside. */
  readonly inside: number;
  readonly outside: number;
}

export interface NoBall {
  readonly why: string;
}

const SMALLEST_RADIUS_PX = 4;
/** A whole disc fills this share of the box about it (pi/4), give or take. */
const FILL = { least: 0.7, most: 0.87 };
const LONGEST_TO_SHORTEST = 1.25;

/** The dense patch at `near`, or why it is no whole ball. */
export function findBall(film: Attenuation, near: Pixel): RoughBall | NoBall {
  const col = Math.round(near[0]);
  const row = Math.round(near[1]);
  if (col < 0 || row < 0 || col >= film.cols || row >= film.rows)
    return { why: 'the point given for the ball lies off the film' };
  const inside = medianAbout(film, col, row, 2);
  const outside = lowAbout(film, col, row);
  if (!(inside > outside)) return { why: 'nothing dense lies at the point given for the ball' };
  const patch = flood(film, col, row, outside + (inside - outside) / 2);
  const { minCol, maxCol, minRow, maxRow, count } = patch;
  const width = maxCol - minCol + 1;
  const height = maxRow - minRow + 1;
  if (patch.touchesEdge) return { why: "the ball is cut by the film's edge; its size cannot be read" };
  if (Math.min(width, height) < 2 * SMALLEST_RADIUS_PX)
    return { why: 'the patch at the point given is too small for a ball' };
  const fill = count / (width * height);
  const ratio = Math.max(width, height) / Math.min(width, height);
  if (ratio > LONGEST_TO_SHORTEST || fill < FILL.least || fill > FILL.most) {
    return { why: 'what lies at the point given is not a whole ball (cut, or covered by something else)' };
  }
  return {
    centre: [patch.sumCol / count, patch.sumRow / count],
    radiusPx: Math.sqrt(count / Math.PI),
    inside,
    outside,
  };
}

function medianAbout(film: Attenuation, col: number, row: number, half: number): number {
  const v: number[] = [];
  for (let r = Math.max(0, row - half); r <= Math.min(film.rows - 1, row + half); r++) {
    for (let c = Math.max(0, col - half); c <= Math.min(film.cols - 1, col + half); c++)
      v.push(film.values[r * film.cols + c]!);
  }
  v.sort((a, b) => a - b);
  return v[v.length >> 1]!;
}

/** Level of the least dense fifth of the surroundings. */
function lowAbout(film: Attenuation, col: number, row: number): number {
  const half = 120;
  const v: number[] = [];
  for (let r = Math.max(0, row - half); r <= Math.min(film.rows - 1, row + half); r += 3) {
    for (let c = Math.max(0, col - half); c <= Math.min(film.cols - 1, col + half); c += 3)
      v.push(film.values[r * film.cols + c]!);
  }
  v.sort((a, b) => a - b);
  return v[Math.floor(v.length / 5)]!;
}

interface Patch {
  minCol: number;
  maxCol: number;
  minRow: number;
  maxRow: number;
  count: number;
  sumCol: number;
  sumRow: number;
  touchesEdge: boolean;
}

/** All pixels above the level that hang together with the first; stops soon after touching the film's edge. */
function flood(film: Attenuation, col: number, row: number, level: number): Patch {
  const seen = new Uint8Array(film.values.length);
  const stack = [row * film.cols + col];
  seen[stack[0]!] = 1;
  const p: Patch = {
    minCol: col,
    maxCol: col,
    minRow: row,
    maxRow: row,
    count: 0,
    sumCol: 0,
    sumRow: 0,
    touchesEdge: false,
  };
  while (stack.length > 0) {
    const i = stack.pop()!;
    const c = i % film.cols;
    const r = (i - c) / film.cols;
    p.count++;
    p.sumCol += c;
    p.sumRow += r;
    p.minCol = Math.min(p.minCol, c);
    p.maxCol = Math.max(p.maxCol, c);
    p.minRow = Math.min(p.minRow, r);
    p.maxRow = Math.max(p.maxRow, r);
    if (c === 0 || r === 0 || c === film.cols - 1 || r === film.rows - 1) {
      p.touchesEdge = true;
      continue;
    }
    for (const j of [i - 1, i + 1, i - film.cols, i + film.cols]) {
      if (seen[j] || film.values[j]! < level) continue;
      seen[j] = 1;
      stack.push(j);
    }
  }
  return p;
}
