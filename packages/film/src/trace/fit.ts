/**
 * Fits the bone model to all rows at once: Gauss-Newton with damping, cells weighted by a long-tailed distribution
 * (what does not belong to the bone is not believed), smoothness and a few mild expectations as prior.
 */
import { entry, value as evidence } from '@bonewright/evidence';
import {
  type BoneModel,
  GLOBAL_COUNT,
  globalsOf,
  PART_COUNT,
  PARTS,
  type Part,
  partsAt,
  ROW_UNKNOWNS,
  rowModel,
  unknownsOf,
} from './bone-model.ts';
import type { CellRow } from './cells.ts';
import { type Envelope, envelope, factor, forward, solved } from './envelope.ts';
import { basisAt } from './spline.ts';

export interface FitSetting {
  /** Noise of one pixel, attenuation. */
  readonly noise: number;
  /** What the model may be off by in a cell, attenuation. */
  readonly misfit: number;
  /** Width of the bone in pixels and its shadow's height: the scales of all priors. */
  readonly width: number;
  readonly height: number;
  /** Share of the usual roughness that the splines are allowed: below 1 for a first, stiff fit. */
  readonly stiffness: number;
  readonly steps: number;
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

/** A gain in log likelihood that is no more worth a step. */
const SETTLED = 0.05;
/** Degrees of freedom of the cells' t distribution. */
const TAIL = 4;
/** Second differences of the splines' coefficients: sd in widths (lengths) or heights (attenuations). */
const ROUGHNESS: Record<Part, number> = {
  co: 0.01,
  ao: 0.01,
  ci: 0.015,
  ai: 0.015,
  ho: 0.04,
  hi: 0.04,
  b0: 0.06,
  b1: 0.06,
  b2: 0.04,
};
const LENGTHS = new Set<Part>(['co', 'ao', 'ci', 'ai']);

const DBG = (globalThis as {DBG?: boolean}).DBG;
export function fitBone(start: BoneModel, rows: readonly CellRow[], setting: FitSetting): FitResult {
  let model = start;
  let damping = 1e-3;
  let here = linearise(model, rows, setting);
  for (let step = 0; step < setting.steps; step++) {
    const next = tryStep(model, here, damping, rows, setting);
    if (DBG) console.log(step, here.cost.toFixed(2), next.cost.toFixed(2), damping.toExponential(1));
    if (next.cost < here.cost) {
      const gain = here.cost - next.cost;
      model = next.model;
      here = linearise(model, rows, setting);
      damping = Math.max(1e-7, damping * 0.2);
      if (gain < SETTLED) break;
    } else {
      damping *= 8;
      if (damping > 1e6) break;
    }
  }
  const n = here.gradient.length;
  const l = cholesky(here.normal, n);
  if (!l) throw new Error('trace: the normal matrix lost its definiteness');
  return { model, covariance: inverseOf(l, n), rowChi: here.rowChi, residuals: here.residuals, cost: here.cost };
}

interface Linearised {
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
  readonly cost: number;
  readonly rowChi: number[];
  readonly residuals: Float64Array[];
}

function tryStep(
  model: BoneModel,
  here: Linearised,
  damping: number,
  rows: readonly CellRow[],
  setting: FitSetting,
): { model: BoneModel; cost: number } {
  const n = here.gradient.length;
  const damped = Float64Array.from(here.normal);
  for (let i = 0; i < n; i++) damped[i * n + i]! *= 1 + damping;
  const l = cholesky(damped, n);
  if (!l) return { model, cost: Number.POSITIVE_INFINITY };
  const d = solveWith(l, n, here.gradient);
  const c = model.c.map((v, i) => v + d[i]!);
  const next = { ...model, c: keptPossible(model, c, setting) };
  return { model: next, cost: costOf(next, rows, setting) };
}

/** Half-widths stay positive, the canal inside the wall, the blur between a third of a pixel and eight. */
function keptPossible(model: BoneModel, c: Float64Array, setting: FitSetting): Float64Array {
  const k = model.grid.count;
  for (let i = 0; i < k; i++) {
    c[k + i] = Math.max(0.1 * setting.width, c[k + i]!);
    c[3 * k + i] = Math.min(0.99 * c[k + i]!, Math.max(0.06 * setting.width, c[3 * k + i]!));
  }
  const g = c.length - GLOBAL_COUNT;
  c[g] = Math.min(Math.log(8), Math.max(Math.log(0.33), c[g]!));
  c[g + 1] = Math.min(0.25, Math.max(0, c[g + 1]!));
  c[g + 2] = Math.min(0.2, Math.max(-0.05, c[g + 2]!));
  return c;
}

const smearOf = 1 / 12;

function costOf(model: BoneModel, rows: readonly CellRow[], setting: FitSetting): number {
  let cost = priorCost(model, setting);
  const globals = globalsOf(model);
  for (const row of rows) {
    const value = new Float64Array(row.x.length);
    const parts = partsAt(model, row.s);
    rowModel(parts, globals, smearOf, row.x, value, null);
    for (let i = 0; i < value.length; i++) cost += tailCost(row.value[i]! - value[i]!, varianceOf(row.n[i]!, setting));
    cost += expectationCost(parts, rows, setting);
  }
  return cost;
}

const varianceOf = (n: number, s: FitSetting): number => (s.noise * s.noise) / n + s.misfit * s.misfit;
const tailCost = (r: number, v: number): number => ((TAIL + 1) / 2) * Math.log1p((r * r) / (TAIL * v));
const tailWeight = (r: number, v: number): number => (TAIL + 1) / (TAIL * v + r * r);

function linearise(model: BoneModel, rows: readonly CellRow[], setting: FitSetting): Linearised {
  const n = unknownsOf(model.grid);
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  const rowChi: number[] = [];
  const residuals: Float64Array[] = [];
  const globals = globalsOf(model);
  let cost = addPrior(model, setting, normal, gradient);
  for (const row of rows) {
    const parts = partsAt(model, row.s);
    const value = new Float64Array(row.x.length);
    const slope = new Float64Array(row.x.length * ROW_UNKNOWNS);
    rowModel(parts, globals, smearOf, row.x, value, slope);
    const gram = new Float64Array(ROW_UNKNOWNS * ROW_UNKNOWNS);
    const pull = new Float64Array(ROW_UNKNOWNS);
    const r = new Float64Array(row.x.length);
    let chi = 0;
    for (let i = 0; i < value.length; i++) {
      const v = varianceOf(row.n[i]!, setting);
      const d = row.value[i]! - value[i]!;
      r[i] = d / Math.sqrt(v);
      const w = tailWeight(d, v);
      cost += tailCost(d, v);
      chi += w * d * d;
      addOuter(slope, i * ROW_UNKNOWNS, w, d, gram, pull);
    }
    cost += addExpectations(parts, rows, setting, gram, pull);
    spread(model, row.s, gram, pull, normal, gradient);
    rowChi.push(value.length > 0 ? chi / value.length : 0);
    residuals.push(r);
  }
  return { normal, gradient, cost, rowChi, residuals };
}

function addOuter(j: Float64Array, at: number, w: number, d: number, gram: Float64Array, pull: Float64Array): void {
  for (let a = 0; a < ROW_UNKNOWNS; a++) {
    const ja = w * j[at + a]!;
    pull[a]! += ja * d;
    for (let b = 0; b <= a; b++) gram[a * ROW_UNKNOWNS + b]! += ja * j[at + b]!;
  }
}

/** Shares a row's matrix out to the four coefficients of each spline that count at s. */
function spread(
  model: BoneModel,
  s: number,
  gram: Float64Array,
  pull: Float64Array,
  normal: Float64Array,
  gradient: Float64Array,
): void {
  const { first, w } = basisAt(model.grid, s - model.origin);
  const n = gradient.length;
  const k = model.grid.count;
  const index = (a: number, q: number) => (a < PART_COUNT ? a * k + first + q : PART_COUNT * k + a - PART_COUNT);
  for (let a = 0; a < ROW_UNKNOWNS; a++) {
    const qa = a < PART_COUNT ? 4 : 1;
    for (let q = 0; q < qa; q++) {
      const wa = a < PART_COUNT ? w[q]! : 1;
      const i = index(a, q);
      gradient[i]! += wa * pull[a]!;
      for (let b = 0; b < ROW_UNKNOWNS; b++) {
        const g = a >= b ? gram[a * ROW_UNKNOWNS + b]! : gram[b * ROW_UNKNOWNS + a]!;
        const qb = b < PART_COUNT ? 4 : 1;
        for (let z = 0; z < qb; z++) normal[i * n + index(b, z)]! += wa * (b < PART_COUNT ? w[z]! : 1) * g;
      }
    }
  }
}

const scaleOf = (part: Part, s: FitSetting): number =>
  s.stiffness * ROUGHNESS[part] * (LENGTHS.has(part) ? s.width : s.height);

/** Smoothness along the bone, and a blur of about a pixel unless the film says otherwise. */
function addPrior(model: BoneModel, setting: FitSetting, normal: Float64Array, gradient: Float64Array): number {
  const n = gradient.length;
  const k = model.grid.count;
  const { c } = model;
  let cost = 0;
  for (const [p, part] of PARTS.entries()) {
    const weight = 1 / scaleOf(part, setting) ** 2;
    for (let i = 1; i + 1 < k; i++) {
      const at = p * k + i;
      const d = c[at - 1]! - 2 * c[at]! + c[at + 1]!;
      cost += 0.5 * weight * d * d;
      const coefficient = [1, -2, 1];
      for (let a = 0; a < 3; a++) {
        gradient[at - 1 + a]! -= weight * d * coefficient[a]!;
        for (let b = 0; b < 3; b++)
          normal[(at - 1 + a) * n + at - 1 + b]! += weight * coefficient[a]! * coefficient[b]!;
      }
    }
  }
  for (const [i, { mean, sd }] of globalPriors().entries()) {
    const at = n - GLOBAL_COUNT + i;
    const d = (c[at]! - mean) / sd;
    cost += 0.5 * d * d;
    gradient[at]! -= d / sd;
    normal[at * n + at]! += 1 / (sd * sd);
  }
  for (let i = 0; i < n; i++) normal[i * n + i]! += 1e-12;
  return cost;
}

/** What any film's blur, tail and compression are like. */
function globalPriors(): readonly { mean: number; sd: number }[] {
  const half = (id: string) => (entry(id).high - entry(id).low) / 2;
  return [
    { mean: 0, sd: BLUR_LOG_SD },
    { mean: evidence('imaging.blur.tail-share'), sd: half('imaging.blur.tail-share') },
    { mean: evidence('imaging.compression'), sd: half('imaging.compression') },
  ];
}
const BLUR_LOG_SD = 0.6;

function priorCost(model: BoneModel, setting: FitSetting): number {
  const n = unknownsOf(model.grid);
  let cost = 0;
  for (const [i, { mean, sd }] of globalPriors().entries())
    cost += 0.5 * ((model.c[n - GLOBAL_COUNT + i]! - mean) / sd) ** 2;
  const k = model.grid.count;
  for (const [p, part] of PARTS.entries()) {
    const weight = 1 / scaleOf(part, setting) ** 2;
    for (let i = 1; i + 1 < k; i++) {
      const at = p * k + i;
      cost += 0.5 * weight * (model.c[at - 1]! - 2 * model.c[at]! + model.c[at + 1]!) ** 2;
    }
  }
  return cost;
}

/**
 * Mild expectations of any long bone, so that a canal the film hardly shows does not run away: canal near the middle,
 * between a quarter and all of the width, its shadow in proportion to its size; soft tissue without sharp bends.
 * Each is value and slope by the parts, over its sd.
 */
function expectations(p: Float64Array, s: FitSetting): readonly Expectation[] {
  const [co, ao, ci, ai, ho, hi] = p as unknown as [number, number, number, number, number, number];
  const off = 1 / (0.08 * s.width);
  const share = 1 / (0.1 * s.width);
  const curve = 1 / (0.2 * s.height);
  const level = 1 / (0.3 * s.height);
  const ratio = 1 / (0.2 * s.height);
  const k = 0.95;
  return [
    {
      r: (ci - co) * off,
      j: [
        [0, -off],
        [2, off],
      ],
    },
    {
      r: (ai - 0.65 * ao) * share,
      j: [
        [1, -0.65 * share],
        [3, share],
      ],
    },
    { r: p[8]! * curve, j: [[8, curve]] },
    { r: (ho - s.height) * level, j: [[4, level]] },
    {
      r: (hi - (k * ho * ai) / ao) * ratio,
      j: [
        [1, ((k * ho * ai) / (ao * ao)) * ratio],
        [3, -((k * ho) / ao) * ratio],
        [4, -((k * ai) / ao) * ratio],
        [5, ratio],
      ],
    },
  ];
}

interface Expectation {
  readonly r: number;
  readonly j: readonly (readonly [number, number])[];
}

/** One expectation counts about once for each width of bone. */
const expectationWeight = (rows: readonly CellRow[], s: FitSetting): number =>
  rows.length > 1 ? (rows[1]!.s - rows[0]!.s) / s.width : 1;

function addExpectations(
  p: Float64Array,
  rows: readonly CellRow[],
  s: FitSetting,
  gram: Float64Array,
  pull: Float64Array,
): number {
  const w = expectationWeight(rows, s);
  let cost = 0;
  for (const { r, j } of expectations(p, s)) {
    cost += 0.5 * w * r * r;
    for (const [a, ja] of j) {
      pull[a]! -= w * ja * r;
      for (const [b, jb] of j) if (b <= a) gram[a * ROW_UNKNOWNS + b]! += w * ja * jb;
    }
  }
  return cost;
}

function expectationCost(p: Float64Array, rows: readonly CellRow[], s: FitSetting): number {
  const w = expectationWeight(rows, s);
  return expectations(p, s).reduce((sum, { r }) => sum + 0.5 * w * r * r, 0);
}
