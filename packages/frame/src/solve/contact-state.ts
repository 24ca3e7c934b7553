/**
 * The true state of contacts and sleeves under one load: Newton's method on the interface's energy, which is convex, with
 * an exact line search, so that it cannot cycle. A part that only a contact yet to shut will hold gets a soft pivot
 * for the step; whether the frame can move freely is judged on the state it ends in.
 */
import { InputError } from '@bonewright/fault';
import type { GapLaws } from './gaps.ts';
import type { HeldInterface, Tangent } from './held-interface.ts';
import { exactStep } from './line-search.ts';
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
  const closed = { values: new Float64Array(size * size), inverse: new Float64Array(size) };
  const amounts = new Float64Array(laws.rows);
  const rates = new Float64Array(laws.rows);
  const trial = new Float64Array(laws.rows);
  const force = new Float64Array(laws.rows);
  const bearing = new Uint8Array(laws.contacts + laws.sleeves);
  let tangent: Tangent = { n: 0, ...closed };
  let motion: Float64Array | null = null;

  function solve(held: HeldInterface, load: Float64Array, x: Float64Array): void {
    settle(held, load, x);
    if (motion) throw new FreeMotion(motion);
  }

  function settle(held: HeldInterface, load: Float64Array, x: Float64Array): void {
    const n = held.open.n;
    x.fill(0, 0, n);
    amounts.fill(0);
    laws.bears(amounts, bearing);
    let work = 0;
    let previous = Number.POSITIVE_INFINITY;
    let stalled = false;
    for (let count = 0; count < MOST_STEPS; count++) {
      findResidual(held, load, x);
      takeTangent(held);
      step.set(residual);
      solveTangent(tangent, step);
      const gain = dot(residual, step, n);
      // A soft pivot gains 1 / SOFT times what a sound one would for the same force.
      if ((motion ? SOFT : 1) * gain <= SETTLED * work || (stalled && gain >= previous / 4)) return;
      const t = stepLength(held, gain);
      for (let i = 0; i < n; i++) x[i]! += t * step[i]!;
      multiplyRows(held.gapRows, n, x, amounts);
      const isWhole = !laws.bears(amounts, bearing) && t === 1;
      if (isWhole && laws.isLinear(bearing)) return;
      work = Math.abs(dot(load, x, n)) + gapWork();
      stalled = isWhole && gain <= STALLED * work;
      previous = gain;
    }
    throw new InputError(
      `contacts and sleeves did not settle in ${MOST_STEPS} steps`,
      '',
      'look for stiffness far apart',
    );
  }

  /** What contacts and sleeves have taken up. */
  function gapWork(): number {
    laws.force(amounts, force);
    return Math.abs(dot(force, amounts, laws.rows));
  }

  /** residual = load - block x - rowsT force */
  function findResidual(held: HeldInterface, load: Float64Array, x: Float64Array): void {
    const n = held.open.n;
    multiplyBlock(held.block, n, x, residual);
    laws.force(amounts, force);
    for (let i = 0; i < n; i++) residual[i] = load[i]! - residual[i]!;
    for (let row = 0; row < laws.rows; row++) {
      if (force[row] === 0) continue;
      for (let i = 0; i < n; i++) residual[i]! -= force[row]! * held.gapRows[row * n + i]!;
    }
  }

  /** The factored tangent of the present state, and the motion that it leaves free. */
  function takeTangent(held: HeldInterface): void {
    if (!bearing.includes(1)) {
      if (!held.isFactored) {
        held.open.values.set(held.block);
        held.openMotion = factor(held, held.open, held.diagonal);
        held.isFactored = true;
      }
      tangent = held.open;
      motion = held.openMotion;
      return;
    }
    const n = held.open.n;
    tangent = { n, ...closed };
    closed.values.set(held.block);
    diagonal.set(held.diagonal);
    laws.tangent(amounts, (k, row, weight, weight2) => addRow(held.gapRows, n, k, row, weight, weight2));
    motion = factor(held, tangent, diagonal);
  }

  function addRow(gapRows: Float64Array, n: number, k: number, row: number, weight: number, weight2: number): void {
    for (let i = 0; i < n; i++) {
      along[i] = weight * gapRows[row * n + i]! + (weight2 === 0 ? 0 : weight2 * gapRows[(row + 1) * n + i]!);
    }
    for (let i = 0; i < n; i++) {
      if (along[i] === 0) continue;
      const share = k * along[i]!;
      diagonal[i]! += share * along[i]!;
      for (let j = i; j < n; j++) closed.values[i * n + j]! += share * along[j]!;
    }
  }

  function factor(held: HeldInterface, system: Tangent, scale: Float64Array): Float64Array | null {
    let free: Float64Array | null = null;
    eliminateSquare(system.values, system.n, system.n, scale, system.inverse, (unknown) => {
      const { pivot, freeMotion } = measure(held, system, unknown, amounts);
      if (!freeMotion) return pivot;
      free ??= freeMotion;
      return SOFT * (scale[unknown]! || 1);
    });
    return free;
  }

  function stepLength(held: HeldInterface, gain: number): number {
    if (laws.rows === 0) return 1;
    const n = held.open.n;
    multiplyRows(held.gapRows, n, step, rates);
    multiplyBlock(held.block, n, step, along);
    const curve = dot(along, step, n);
    laws.force(amounts, force);
    const start = -gain - dot(force, rates, laws.rows);
    const slope = (t: number): number => {
      for (let row = 0; row < laws.rows; row++) trial[row] = amounts[row]! + t * rates[row]!;
      laws.force(trial, force);
      return start + t * curve + dot(force, rates, laws.rows);
    };
    const t = exactStep(slope, -gain);
    if (Number.isFinite(t)) return t;
    if (motion) throw new FreeMotion(motion);
    throw new InputError('the loads push the frame without end', 'loads', 'look for numbers far out of scale');
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
  out.fill(0, 0, n);
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
