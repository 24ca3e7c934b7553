/**
 * Fits the bone model to all rows at once: Gauss-Newton with damping, cells weighted by a long-tailed distribution
 * (what does not belong to the bone is not believed), smoothness and a few mild expectations as prior.
 */

import type { CellRow } from './cells.ts';
import { type Envelope, factor, forward } from './envelope.ts';
import { type BoneModel, GLOBAL_COUNT, globalsOf, indexOf, PART, partsAt, WITH_SECOND } from './layout.ts';
import { noiseLift, noiseVariance, type PixelNoise } from './noise.ts';
import { addPrior, expectations, type PriorScale } from './prior.ts';
import { deficitOf, rowModel } from './row-model.ts';
import { median } from './start.ts';
import { emptySystem, firmed, type System, shapeOf, stepOf } from './system.ts';

export interface FitSetting extends PriorScale {
  readonly noise: PixelNoise;
  /** What the model may be off by in a cell, attenuation. */
  readonly misfit: number;
  readonly steps: number;
  /** Times that the beam's blur is taken anew, at most. */
  readonly rounds: number;
}

export interface FitResult {
  readonly model: BoneModel;
  /** Posterior covariance of two linear functions of model.c. */
  covariance(u: Float64Array, v: Float64Array): number;
  /** Weighted residual square of each row, mean over its cells; about 1 where the model holds. */
  readonly rowChi: readonly number[];
  /** Residual of each cell in sd, before weighting. */
  readonly residuals: readonly Float64Array[];
  readonly cost: number;
}

/** Degrees of freedom of the cells' t distribution. */
const TAIL = 4;
/** A gain in log likelihood that is no more worth a step. */
const SETTLED = 0.05;
/** The move of a wall, in widths, below which the beam's blur is not taken anew. */
const STILL = 3e-4;
/** What a cell's own extent adds to the blur: a pixel's box. */
const CELL_SMEAR = 1 / 12;
/** Range of blur (logarithm of pixels), tail share, compression: wider than any film, so that no step ends at a wall. */
const GLOBAL_RANGE = [
  [Math.log(0.33), Math.log(8)],
  [-0.15, 0.4],
  [-0.2, 0.4],
] as const;

interface Linearised {
  readonly model: BoneModel;
  readonly system: System;
  readonly rowChi: number[];
  readonly residuals: Float64Array[];
}

export function fitBone(start: BoneModel, rows: readonly CellRow[], setting: FitSetting): FitResult {
  const shape = shapeOf(start.grid, start.parts);
  const first = linearise(
    start,
    rows,
    rows.map((row) => heldFor(row, start, setting, 1)),
    setting,
    shape,
  );
  let here = settled(start, rows, setting, shape, trustIn(first.rowChi));
  // the beam's blur is held while the model moves, then taken anew: its slopes are not needed that way
  for (let round = 1; round < setting.rounds; round++) {
    const before = here.model;
    here = settled(before, rows, setting, shape, trustIn(here.rowChi));
    if (moved(before, here.model, setting.width) < STILL) break;
  }
  const l = firmFactor(here.system);
  return {
    model: here.model,
    covariance: (u, v) => {
      const a = forward(shape, l, u);
      const b = u === v ? a : forward(shape, l, v);
      return a.reduce((sum, x, i) => sum + x * b[i]!, 0);
    },
    rowChi: here.rowChi,
    residuals: here.residuals,
    cost: here.system.cost,
  };
}

/** The most likely model for the beam blur of `start`. */
function settled(
  start: BoneModel,
  rows: readonly CellRow[],
  setting: FitSetting,
  shape: Envelope,
  trust: readonly number[],
): Linearised {
  const held = rows.map((row, k) => heldFor(row, start, setting, trust[k]!));
  let here = linearise(start, rows, held, setting, shape);
  let damping = 1e-3;
  for (let step = 0; step < setting.steps && damping < 1e6; step++) {
    const c = stepped(here, damping, setting);
    const next = c && linearise({ ...start, c }, rows, held, setting, shape);
    if (next && next.system.cost < here.system.cost) {
      const gain = here.system.cost - next.system.cost;
      here = next;
      damping = Math.max(1e-7, damping * 0.2);
      if (gain < SETTLED) break;
    } else {
      damping *= 8;
    }
  }
  return here;
}

/** Coefficients after one step; null where the system has none. What would leave its range stops at the wall, and the others know. */
function stepped({ model, system }: Linearised, damping: number, setting: FitSetting): Float64Array | null {
  const stopped = new Map<number, number>();
  for (let round = 0; ; round++) {
    const d = stepOf(system, damping, stopped);
    if (!d) return null;
    const free = model.c.map((v, i) => v + d[i]!);
    const kept = keptPossible(model, free.slice(), setting);
    const before = stopped.size;
    for (let i = 0; i < free.length; i++) {
      if (Math.abs(kept[i]! - free[i]!) > WALL * setting.width) stopped.set(i, kept[i]! - model.c[i]!);
    }
    if (stopped.size === before || round === WALL_ROUNDS) return kept;
  }
}
const WALL = 1e-6;
const WALL_ROUNDS = 3;

/** Rows that fit much worse than the others (the fracture's edge, a pin's rim) count for less. */
function trustIn(rowChi: readonly number[]): number[] {
  const usual = median(rowChi);
  return rowChi.map((chi) => Math.min(1, (FAIR * usual) / chi) ** 2);
}
const FAIR = 1.5;

/** What is held while the model moves, for each cell of a row. */
interface Held {
  /** What the blur of the beam takes from the shadow. */
  readonly deficit: Float64Array;
  /** Variance of the cell's value: its pixels' noise, and what the model may be off by. */
  readonly variance: Float64Array;
  /** By how much noise lifts the mean of a logarithm. */
  readonly lift: Float64Array;
  /** Share of its weight that the row keeps. */
  readonly trust: number;
}

function heldFor(row: CellRow, model: BoneModel, { noise, misfit }: FitSetting, trust: number): Held {
  const parts = partsAt(model, row.s);
  const globals = globalsOf(model);
  const deficit = deficitOf(parts, globals, model.unitsPerLog, CELL_SMEAR, row.x);
  const value = new Float64Array(row.x.length);
  rowModel(
    parts,
    globals,
    deficit,
    CELL_SMEAR,
    row.x,
    value,
    new Float64Array(row.x.length * (model.parts + GLOBAL_COUNT)),
  );
  const pixel = value.map((v) => noiseVariance(noise, model.unitsPerLog, v));
  return {
    deficit,
    variance: pixel.map((v, i) => (v / row.n[i]! + misfit ** 2) / trust),
    lift: pixel.map((v) => noiseLift(v, model.unitsPerLog)),
    trust,
  };
}

/** How far the walls have moved, in widths. */
function moved(a: BoneModel, b: BoneModel, width: number): number {
  let most = 0;
  for (let i = 0; i < a.grid.count; i++) {
    for (const part of [PART.ao, PART.ai]) {
      const at = indexOf(a.parts, part, i);
      most = Math.max(most, Math.abs(a.c[at]! - b.c[at]!));
    }
  }
  return most / width;
}

/** Factor of the matrix; where rounding has cost it its definiteness, of one with a firmer diagonal. */
function firmFactor({ shape, normal }: System): Float64Array {
  for (let firmer = 0; ; firmer = firmer === 0 ? 1e-12 : firmer * 10) {
    const l = factor(shape, firmed(shape, normal, firmer));
    if (l) return l;
    if (firmer > 1) throw new Error('trace: the normal matrix is not definite');
  }
}

/** Half-widths and the height stay positive, the canal inside the wall, the globals in their range. */
function keptPossible(model: BoneModel, c: Float64Array, { width, height }: PriorScale): Float64Array {
  const at = (part: number, i: number) => indexOf(model.parts, part, i);
  for (let i = 0; i < model.grid.count; i++) {
    const outer = Math.max(0.1 * width, c[at(PART.ao, i)]!);
    c[at(PART.ao, i)] = outer;
    c[at(PART.ai, i)] = Math.min(0.99 * outer, Math.max(0.06 * width, c[at(PART.ai, i)]!));
    c[at(PART.ho, i)] = Math.max(0.05 * height, c[at(PART.ho, i)]!);
    if (model.parts < WITH_SECOND) continue;
    c[at(PART.a2, i)] = Math.min(width, Math.max(0.04 * width, c[at(PART.a2, i)]!));
    const second = Math.max(0, c[at(PART.h2, i)]!);
    c[at(PART.h2, i)] = second;
    c[at(PART.i2, i)] = Math.min(0.9 * second, Math.max(0, c[at(PART.i2, i)]!));
  }
  for (const [i, [low, high]] of GLOBAL_RANGE.entries()) {
    const at = c.length - GLOBAL_COUNT + i;
    c[at] = Math.min(high, Math.max(low, c[at]!));
  }
  return c;
}

/** Cost, gradient and matrix at the model; cells weigh as a t distribution says. */
function linearise(
  model: BoneModel,
  rows: readonly CellRow[],
  held: readonly Held[],
  setting: FitSetting,
  shape: Envelope,
): Linearised {
  const system = emptySystem(shape);
  const rowChi: number[] = [];
  const residuals: Float64Array[] = [];
  const globals = globalsOf(model);
  addPrior(model, setting, system);
  // one expectation counts about once for each width of bone
  const share = rows.length > 1 ? (rows[1]!.s - rows[0]!.s) / setting.width : 1;
  const unknowns = model.parts + GLOBAL_COUNT;
  for (const [k, row] of rows.entries()) {
    const parts = partsAt(model, row.s);
    const count = row.x.length;
    const value = new Float64Array(count);
    const slope = new Float64Array(count * unknowns);
    const { deficit, variance, lift, trust } = held[k]!;
    rowModel(parts, globals, deficit, CELL_SMEAR, row.x, value, slope);
    const gram = new Float64Array(unknowns * unknowns);
    const pull = new Float64Array(unknowns);
    const r = new Float64Array(count);
    let chi = 0;
    for (let i = 0; i < count; i++) {
      const v = variance[i]!;
      const d = row.value[i]! - lift[i]! - value[i]!;
      r[i] = d / Math.sqrt(v * trust);
      const w = (TAIL + 1) / (TAIL * v + d * d);
      system.cost += ((TAIL + 1) / 2) * Math.log1p((d * d) / (TAIL * v));
      // told without the row's own trust, so that a row cannot hide behind it
      chi += ((TAIL + 1) * d * d) / (TAIL * v * trust + d * d);
      addOuter(slope, i * unknowns, unknowns, w, d, gram, pull);
    }
    for (const { r: e, j } of expectations(parts, setting)) {
      system.cost += (share * e * e) / 2;
      for (const [a, ja] of j) {
        pull[a]! -= share * ja * e;
        for (const [b, jb] of j) if (b <= a) gram[a * unknowns + b]! += share * ja * jb;
      }
    }
    system.addRow(model, row.s, gram, pull);
    rowChi.push(count > 0 ? chi / count : 0);
    residuals.push(r);
  }
  return { model, system, rowChi, residuals };
}

function addOuter(
  j: Float64Array,
  at: number,
  n: number,
  w: number,
  d: number,
  gram: Float64Array,
  pull: Float64Array,
): void {
  for (let a = 0; a < n; a++) {
    const ja = w * j[at + a]!;
    pull[a]! += ja * d;
    for (let b = 0; b <= a; b++) gram[a * n + b]! += ja * j[at + b]!;
  }
}
