/**
 * A plan laid over a later film by three points found in both: the similarity (size, turn, shift, mirrored or not) that
 * fits them best. Plan points are [s, w] in mm as in the plan's figures, film points are pixels.
 */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import type { Measured, Pixel } from '../model/trace.ts';

/** s along the bone from its proximal end, w across it. */
export type PlanPoint = readonly [sMm: number, wMm: number];

export interface Match {
  readonly plan: PlanPoint;
  readonly film: Pixel;
}

/** A plan on a film. */
export interface Placing {
  /** film = origin + pxPerMm * turn(s, w), with w first turned over where mirrored. */
  readonly origin: Pixel;
  readonly cosPx: number;
  readonly sinPx: number;
  readonly isMirrored: boolean;
  readonly pxPerMm: Measured;
  readonly turnDeg: Measured;
  /** Root mean square distance of the film points from where the plan puts them. */
  readonly residualPx: number;
  readonly residualMm: number;
  /** Sd of a point in each direction at the middle of the matched points, and how it grows away from there. */
  readonly centre: PlanPoint;
  readonly count: number;
  readonly pointSdPx: number;
  readonly spreadMm: number;
  readonly warnings: readonly string[];
}

/** No placing, and why. */
export interface NotPlaced {
  readonly why: string;
}

/** Points within this share of their spread of one line do not say whether the plan is turned over. */
const FLAT = 0.05;
/** Unknowns of a similarity. */
const DEGREES_USED = 4;

/**
 * Places the plan by three matched points or more. Say `isMirrored` where the points lie nearly on a line (true: the
 * plan's w runs against the side that a quarter turn from s to w has on the film). Throws InputError below three points.
 */
export function placePlan(matches: readonly Match[], isMirrored?: boolean): Placing | NotPlaced {
  if (matches.length < 3) throw new InputError(`${matches.length} points are matched`, 'points', 'match three');
  if (!matches.flatMap((m) => [...m.plan, ...m.film]).every(Number.isFinite))
    throw new InputError('a matched point is not a number', 'points', 'give millimetres and pixels');
  const centre = mean(matches.map((m) => m.plan));
  const spreadMm = Math.hypot(...matches.flatMap(({ plan }) => [plan[0] - centre[0], plan[1] - centre[1]]));
  if (!(spreadMm > 0)) return { why: 'the points of the plan are all the same' };
  if (isMirrored === undefined && flatness(matches, centre) < FLAT) {
    return {
      why: 'the points lie nearly on a line: say which side of the film is which, or match one beside the bone',
    };
  }
  const candidates = (isMirrored === undefined ? [false, true] : [isMirrored]).map((m) => fitted(matches, m, spreadMm));
  const best = candidates.reduce((a, b) => (b.residualPx < a.residualPx ? b : a));
  if (!(best.pxPerMm.value! > 0)) return { why: 'the points of the film are all the same' };
  const share = best.residualMm / spreadMm;
  if (share <= value('alignment.placing.residual')) return best;
  const warning = `the three points miss the plan by ${best.residualMm.toFixed(1)} mm: one is matched wrongly, or the bone lies otherwise`;
  return { ...best, warnings: [warning] };
}

export const isPlaced = (p: Placing | NotPlaced): p is Placing => 'origin' in p;

/** Where a point of the plan falls on the film. */
export function onFilm(p: Placing, [s, w]: PlanPoint): Pixel {
  const v = p.isMirrored ? -w : w;
  return [p.origin[0] + p.cosPx * s - p.sinPx * v, p.origin[1] + p.sinPx * s + p.cosPx * v];
}

/** Which point of the plan lies under a pixel. */
export function onPlan(p: Placing, [col, row]: Pixel): PlanPoint {
  const [c, r] = [col - p.origin[0], row - p.origin[1]];
  const square = p.cosPx ** 2 + p.sinPx ** 2;
  const w = (p.cosPx * r - p.sinPx * c) / square;
  return [(p.cosPx * c + p.sinPx * r) / square, p.isMirrored ? -w : w];
}

/** Sd of the plan's place at a point, in each direction, mm. */
export function placeSdMm(p: Placing, [s, w]: PlanPoint): number {
  const away = Math.hypot(s - p.centre[0], w - p.centre[1]);
  return (p.pointSdPx / p.pxPerMm.value!) * Math.hypot(1 / Math.sqrt(p.count), away / p.spreadMm);
}

/** Least squares in closed form: the points as complex numbers about their means. */
function fitted(matches: readonly Match[], isMirrored: boolean, spreadMm: number): Placing {
  const plan = matches.map(({ plan: [s, w] }): Pixel => [s, isMirrored ? -w : w]);
  const film = matches.map((m) => m.film);
  const [p0, f0] = [mean(plan), mean(film)];
  let cos = 0;
  let sin = 0;
  for (const [i, p] of plan.entries()) {
    const [s, w] = [p[0] - p0[0], p[1] - p0[1]];
    const [c, r] = [film[i]![0] - f0[0], film[i]![1] - f0[1]];
    cos += s * c + w * r;
    sin += s * r - w * c;
  }
  const cosPx = cos / spreadMm ** 2;
  const sinPx = sin / spreadMm ** 2;
  const origin: Pixel = [f0[0] - cosPx * p0[0] + sinPx * p0[1], f0[1] - sinPx * p0[0] - cosPx * p0[1]];
  const misses = plan.flatMap(([s, w], i) => [
    film[i]![0] - origin[0] - cosPx * s + sinPx * w,
    film[i]![1] - origin[1] - sinPx * s - cosPx * w,
  ]);
  const scale = Math.hypot(cosPx, sinPx);
  const sumOfSquares = misses.reduce((t, m) => t + m * m, 0);
  const residualPx = Math.sqrt(sumOfSquares / matches.length);
  const pointSdPx = Math.max(value('measure.click.sd'), Math.sqrt(sumOfSquares / (2 * matches.length - DEGREES_USED)));
  return {
    origin,
    cosPx,
    sinPx,
    isMirrored,
    pxPerMm: { value: scale, sd: pointSdPx / spreadMm },
    turnDeg: {
      value: (Math.atan2(sinPx, cosPx) * 180) / Math.PI,
      sd: ((pointSdPx / spreadMm / scale) * 180) / Math.PI,
    },
    residualPx,
    residualMm: residualPx / scale,
    centre: mean(matches.map((m) => m.plan)),
    count: matches.length,
    pointSdPx,
    spreadMm,
    warnings: [],
  };
}

const mean = (points: readonly Pixel[]): Pixel => [
  points.reduce((t, p) => t + p[0], 0) / points.length,
  points.reduce((t, p) => t + p[1], 0) / points.length,
];

/** Smaller over larger spread of the plan's points about their middle: 0 on a line. */
function flatness(matches: readonly Match[], [s0, w0]: PlanPoint): number {
  const sum = (f: (s: number, w: number) => number) =>
    matches.reduce((t, { plan: [s, w] }) => t + f(s - s0, w - w0), 0);
  const [ss, ww, sw] = [sum((s) => s * s), sum((_, w) => w * w), sum((s, w) => s * w)];
  const root = Math.hypot((ss - ww) / 2, sw);
  const middle = (ss + ww) / 2;
  return Math.sqrt(Math.max(0, (middle - root) / (middle + root)));
}
