/**
 * The true state of contacts and sleeves under one load: Newton's method on the interface's energy, which is convex, with
 * an exact line search, so that it cannot cycle. A part that only a contact yet to shut will hold gets a soft pivot
 * for the step; whether the frame can move freely is judged on the state it ends in.
 */
import { InputError } from '@bonewright/fault';
import { type GapLaws, SLEEVE_ROWS } from './gaps.ts';
import type { HeldInterface, Tangent } from './held-interface.ts';
import { exactStep, type Slope } from './line-search.ts';
import { backSquare, eliminateSquare, forwardSquare } from './square.ts';

/** Share of the work done so far below which what is left to gain is rounding. */
const SETTLED = 1e-20;
/** A share below which a step that gains no less than a quarter of the one before is rounding too. */
const STALLED = 1e-10;
/** A guard only: a convex energy is settled in a few steps. */
const MOST_STEPS = 400;
/** Share of its diagonal that a free unknown's pivot is given, to move it until something bears. */
const SOFT = 1e-8;

/** A suspect pivot measured again without cancellation, and the motion that it stands for if nothing resists that. */
export interface Measured {
  readonly pivot: number;
  readonly freeMotion: Float64Array | null;
}

/** Measures the pivot of an unknown in a tangent under factorisation, at the amounts of contacts and sleeves. */
export type Measure = (held: HeldInterface, tangent: Tangent, unknown: number, amounts: Float64Array) => Measured;

/** Thrown where nothing resists a motion of all unknowns. */
export class FreeMotion extends Error {
  readonly motion: Float64Array;

  constructor(motion: Float64Array) {
    super('the frame can move freely');
    this.motion = motion;
  }
}

export interface StateSolver {
  /** Writes the motions of the measured unknowns under `load` to `x`. Throws FreeMotion, or InputError if it cannot settle. */
  solve(held: HeldInterface, load: Float64Array, x: Float64Array): void;
  /** Amounts of the contacts' and sleeves' rows in the state found last. */
  readonly amounts: Float64Array;
  /** The tangent of that state. */
  readonly tangent: () => Tangent;
}

/** A solver for interfaces of at most `size` unknowns, which keeps its own workspace. */
export function stateSolver(size: number, laws: GapLaws, measure: Measure): StateSolver {
  const residual = new Float64Array(size);
  const step = new Float64Array(size);
  const along = new Float64Array(size);
  const diagonal = new Float64Array(size);
  const closed = { n: 0, values: new Float64Array(size * size), inverse: new Float64Array(size) };
  const amounts = new Float64Array(laws.rows);
  const rates = new Float64Array(laws.rows);
  const trial = new Float64Array(laws.rows);
  const force = new Float64Array(laws.rows);
  const bearing = new Uint8Array(laws.contacts + laws.sleeves);
  // The interface at work and its number of unknowns; the tangent taken last, what it is scaled by and leaves free.
  let held: HeldInterface;
  let n = 0;
  let tangent: Tangent = closed;
  let scale: Float64Array = diagonal;
  let motion: Float64Array | null = null;
  // Slope of the energy along a step: start + curve t + what contacts and sleeves add.
  let start = 0;
  let curve = 0;
  const slope: Slope = { value: 0, rate: 0, at: slopeAt };

  function solve(interfaceHeld: HeldInterface, load: Float64Array, x: Float64Array): void {
    held = interfaceHeld;
    n = held.open.n;
    settle(load, x);
    if (motion) throw new FreeMotion(motion);
  }

  function settle(load: Float64Array, x: Float64Array): void {
    for (let i = 0; i < n; i++) x[i] = 0;
    amounts.fill(0);
    laws.bears(amounts, bearing);
    let work = 0;
    let previous = Number.POSITIVE_INFINITY;
    let isStalled = false;
    for (let count = 0; count < MOST_STEPS; count++) {
      findResidual(load, x);
      takeTangent();
      for (let i = 0; i < n; i++) step[i] = residual[i]!;
      solveTangent(tangent, step);
      const gain = dot(residual, step, n);
      // A soft pivot gains 1 / SOFT times what a sound one would for the same force.
      if ((motion ? SOFT : 1) * gain <= SETTLED * work || (isStalled && gain >= previous / 4)) return;
      const t = stepLength(gain);
      for (let i = 0; i < n; i++) x[i]! += t * step[i]!;
      multiplyRows(held.gapRows, n, x, amounts);
      const isWhole = !laws.bears(amounts, bearing) && t === 1;
      if (isWhole && laws.isLinear(bearing)) return;
      laws.force(amounts, force);
      work = Math.abs(dot(load, x, n)) + Math.abs(dot(force, amounts, laws.rows));
      isStalled = isWhole && gain <= STALLED * work;
      previous = gain;
    }
    const what = `contacts and sleeves did not settle in ${MOST_STEPS} steps`;
    throw new InputError(what, 'contacts', 'look for stiffness far apart');
  }

  /** residual = load - block x - rowsT force */
  function findResidual(load: Float64Array, x: Float64Array): void {
    multiplyBlock(held.block, n, x, residual);
    laws.force(amounts, force);
    for (let i = 0; i < n; i++) residual[i] = load[i]! - residual[i]!;
    for (let row = 0; row < laws.rows; row++) {
      const pull = force[row]!;
      if (pull === 0) continue;
      for (let i = 0; i < n; i++) residual[i]! -= pull * held.gapRows[row * n + i]!;
    }
  }

  /** Factors the tangent of the present state. While nothing bears it is the block's own, which is factored once. */
  function takeTangent(): void {
    if (!held.isFactored) factorOpen();
    tangent = held.open;
    motion = held.openMotion;
    if (!bearing.includes(1)) return;
    const from = firstChange();
    if (held.openFreeAt >= from) motion = null;
    tangent = closed;
    scale = diagonal;
    closed.n = n;
    for (let i = 0; i < from * n; i++) closed.values[i] = held.open.values[i]!;
    for (let i = from * n; i < n * n; i++) closed.values[i] = held.block[i]!;
    for (let i = 0; i < n; i++) {
      closed.inverse[i] = held.open.inverse[i]!;
      diagonal[i] = held.diagonal[i]!;
    }
    laws.tangent(amounts, addRow);
    eliminateSquare(closed.values, n, from, n, diagonal, closed.inverse, judge);
  }

  function factorOpen(): void {
    tangent = held.open;
    scale = held.diagonal;
    motion = null;
    held.openFreeAt = n;
    for (let i = 0; i < n * n; i++) held.open.values[i] = held.block[i]!;
    eliminateSquare(held.open.values, n, 0, n, held.diagonal, held.open.inverse, judgeOpen);
    held.openMotion = motion;
    held.isFactored = true;
  }

  function judgeOpen(unknown: number): number {
    const pivot = judge(unknown);
    if (motion && held.openFreeAt === n) held.openFreeAt = unknown;
    return pivot;
  }

  /** The first unknown that anything bearing touches. */
  function firstChange(): number {
    let first = n;
    for (let c = 0; c < bearing.length; c++) {
      if (bearing[c] === 0) continue;
      const row = c < laws.contacts ? c : laws.contacts + SLEEVE_ROWS * (c - laws.contacts);
      first = Math.min(first, held.firstOf[row]!);
      if (c >= laws.contacts) first = Math.min(first, held.firstOf[row + 1]!);
    }
    return first;
  }

  /** Adds k times a row (or the weighted sum of two) by itself to the tangent. */
  function addRow(k: number, row: number, weight: number, weight2: number): void {
    const { gapRows } = held;
    for (let i = 0; i < n; i++) {
      along[i] = weight * gapRows[row * n + i]! + (weight2 === 0 ? 0 : weight2 * gapRows[(row + 1) * n + i]!);
    }
    for (let i = 0; i < n; i++) {
      const share = k * along[i]!;
      if (share === 0) continue;
      diagonal[i]! += share * along[i]!;
      for (let j = i; j < n; j++) closed.values[i * n + j]! += share * along[j]!;
    }
  }

  function judge(unknown: number): number {
    const { pivot, freeMotion } = measure(held, tangent, unknown, amounts);
    if (!freeMotion) return pivot;
    motion ??= freeMotion;
    return SOFT * (scale[unknown]! || 1);
  }

  /** The step that is best along the Newton direction. */
  function stepLength(gain: number): number {
    if (laws.rows === 0) return 1;
    multiplyRows(held.gapRows, n, step, rates);
    multiplyBlock(held.block, n, step, along);
    curve = dot(along, step, n);
    start = -gain - dot(force, rates, laws.rows);
    const t = exactStep(slope, -gain);
    if (Number.isFinite(t)) return t;
    if (motion) throw new FreeMotion(motion);
    throw new InputError('the loads push the frame without end', 'loads', 'look for numbers far out of scale');
  }

  function slopeAt(t: number): void {
    for (let row = 0; row < laws.rows; row++) trial[row] = amounts[row]! + t * rates[row]!;
    laws.force(trial, force);
    slope.value = start + t * curve + dot(force, rates, laws.rows);
    slope.rate = curve;
    laws.tangent(trial, addRate);
  }

  function addRate(k: number, row: number, weight: number, weight2: number): void {
    const rate = weight * rates[row]! + (weight2 === 0 ? 0 : weight2 * rates[row + 1]!);
    slope.rate += k * rate * rate;
  }

  return { solve, amounts, tangent: () => tangent };
}

/** Solves for one right side, in place. */
export function solveTangent({ values, n, inverse }: Tangent, x: Float64Array): void {
  forwardSquare(values, n, n, inverse, x);
  backSquare(values, n, n, inverse, x);
}

/** out = block x, from the upper triangle. */
function multiplyBlock(block: Float64Array, n: number, x: Float64Array, out: Float64Array): void {
  for (let i = 0; i < n; i++) out[i] = 0;
  for (let i = 0; i < n; i++) {
    const xi = x[i]!;
    let sum = block[i * n + i]! * xi;
    for (let j = i + 1; j < n; j++) {
      sum += block[i * n + j]! * x[j]!;
      out[j]! += block[i * n + j]! * xi;
    }
    out[i]! += sum;
  }
}

function multiplyRows(rows: Float64Array, n: number, x: Float64Array, out: Float64Array): void {
  for (let row = 0; row < out.length; row++) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += rows[row * n + i]! * x[i]!;
    out[row] = sum;
  }
}

function dot(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i]! * b[i]!;
  return sum;
}
