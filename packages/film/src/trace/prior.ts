/** What is expected of any long bone on any film before this one is looked at: smoothness, mild proportions, usual blur. */
import { entry, value as evidence } from '@bonewright/evidence';
import { type BoneModel, GLOBAL_COUNT, globalsOf, indexOf, PART, PARTS, type Part, WITH_SECOND } from './layout.ts';
import type { System } from './system.ts';

/** Scales of one fit. */
export interface PriorScale {
  /** Width of the bone in pixels and its shadow's height: the scales of all priors. */
  readonly width: number;
  readonly height: number;
  /** Share of the usual roughness that the splines are allowed: below 1 for a first, stiff fit. */
  readonly stiffness: number;
  readonly blur: BlurPrior;
}

/** What is known of a film's blur before the bone is looked at. */
export interface BlurPrior {
  /** Logarithm of the core's sd in pixels, and its own sd. */
  readonly log: number;
  readonly logSd: number;
  /** Share of the tail, and its sd. */
  readonly tail: number;
  readonly tailSd: number;
}

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
  b2: 0.03,
  b3: 0.02,
  c2: 0.015,
  a2: 0.006,
  h2: 0.06,
  i2: 0.04,
};
const LENGTHS = new Set<Part>(['co', 'ao', 'ci', 'ai', 'c2', 'a2']);
/** Blur: about a pixel, give or take. */
const BLUR_LOG_SD = 0.4;
/** Keeps a coefficient that no row sees from leaving the matrix singular. */
const RIDGE = 1e-12;

/** Adds smoothness and what films have in common to the system; the cost is half a sum of squares. */
export function addPrior(model: BoneModel, scale: PriorScale, system: System): void {
  const { c, grid } = model;
  for (const [p, part] of PARTS.slice(0, model.parts).entries()) {
    const sd = scale.stiffness * ROUGHNESS[part] * (LENGTHS.has(part) ? scale.width : scale.height);
    for (let i = 1; i + 1 < grid.count; i++) {
      const at = [-1, 0, 1].map((d) => indexOf(model.parts, p, i + d)) as [number, number, number];
      system.addSquare((c[at[0]]! - 2 * c[at[1]]! + c[at[2]]!) / sd, at, [1 / sd, -2 / sd, 1 / sd]);
    }
  }
  const globals = globalsOf(model);
  for (const [i, { mean, sd }] of globalPriors(scale.blur).entries()) {
    system.addSquare((globals[i]! - mean) / sd, [c.length - GLOBAL_COUNT + i], [1 / sd]);
  }
  for (let i = 0; i < c.length; i++) system.addSquare(0, [i], [Math.sqrt(RIDGE)]);
}

const halfRange = (id: string): number => (entry(id).high - entry(id).low) / 2;

/** Any film: about a pixel, with a faint tail. */
export const USUAL_BLUR: BlurPrior = {
  log: 0,
  logSd: BLUR_LOG_SD,
  tail: evidence('imaging.blur.tail-share'),
  tailSd: halfRange('imaging.blur.tail-share'),
};
const COMPRESSION = { mean: evidence('imaging.compression'), sd: halfRange('imaging.compression') };

const globalPriors = (blur: BlurPrior): readonly { mean: number; sd: number }[] => [
  { mean: blur.log, sd: blur.logSd },
  { mean: blur.tail, sd: blur.tailSd },
  COMPRESSION,
];

/** One expectation at a station: value over its sd, and its slopes by the parts. */
export interface Expectation {
  readonly r: number;
  readonly j: readonly (readonly [part: number, slope: number])[];
}

/** Canal to outer width, and the canal's shadow to the outer one over that ratio. */
const USUAL = { canal: 0.65, canalHeight: 0.95, secondCanal: 0.2, second: 0.15 };
/** Sds: in widths for lengths, in heights for attenuations. */
const SDS = {
  offCentre: 0.08,
  canal: 0.1,
  curve: 0.2,
  skew: 0.1,
  height: 0.3,
  canalHeight: 0.2,
  secondCanal: 0.1,
  second: 0.12,
};

/**
 * Canal near the middle, between a quarter and nearly all of the width, its shadow in proportion to its size; a height
 * like its neighbours'; soft tissue without sharp bends.
 */
export function expectations(p: Float64Array, { width, height }: PriorScale): readonly Expectation[] {
  const [co, ao, ci, ai, ho, hi] = p as unknown as [number, number, number, number, number, number];
  const off = 1 / (SDS.offCentre * width);
  const share = 1 / (SDS.canal * width);
  const curve = 1 / (SDS.curve * height);
  const skew = 1 / (SDS.skew * height);
  const level = 1 / (SDS.height * height);
  const ratio = 1 / (SDS.canalHeight * height);
  const k = USUAL.canalHeight * ratio;
  const one = (part: Part, slope: number) => [PART[part], slope] as const;
  const main: Expectation[] = [
    { r: (ci - co) * off, j: [one('co', -off), one('ci', off)] },
    { r: (ai - USUAL.canal * ao) * share, j: [one('ao', -USUAL.canal * share), one('ai', share)] },
    { r: p[PART.b2]! * curve, j: [one('b2', curve)] },
    { r: p[PART.b3]! * skew, j: [one('b3', skew)] },
    { r: (ho - height) * level, j: [one('ho', level)] },
    {
      r: hi * ratio - (k * ho * ai) / ao,
      j: [one('ao', (k * ho * ai) / (ao * ao)), one('ai', (-k * ho) / ao), one('ho', (-k * ai) / ao), one('hi', ratio)],
    },
  ];
  if (p.length < WITH_SECOND) return main;
  const depth = 1 / (SDS.secondCanal * height);
  const size = 1 / (SDS.second * width);
  return [
    ...main,
    {
      r: (p[PART.i2]! - USUAL.secondCanal * p[PART.h2]!) * depth,
      j: [one('h2', -USUAL.secondCanal * depth), one('i2', depth)],
    },
    { r: (p[PART.a2]! - USUAL.second * width) * size, j: [one('a2', size)] },
    { r: p[PART.h2]! * level, j: [one('h2', level)] },
  ];
}
