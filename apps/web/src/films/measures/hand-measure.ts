/** Measurements by hand on one film: what was clicked, and what that gives at the film's scale. */
import type { FilmState, Payload } from '@bonewright/casebook';
import {
  angleByHand,
  diameterByHand,
  type HandMeasured,
  lengthByHand,
  type Measured,
  type Pixel,
  type Trace,
} from '@bonewright/film';
import { figure } from '../../plan/words.ts';

export const MEASURE_KINDS = ['length', 'angle', 'diameter'] as const;
export type MeasureKind = (typeof MEASURE_KINDS)[number];

export interface HandMeasure {
  readonly id: string;
  readonly kind: MeasureKind;
  /** Fewer than it needs while it is being clicked. */
  readonly points: readonly Pixel[];
}

/** What each click is, in order. A diameter is taken across a line along the bone. */
export const CLICK_WORDS: Readonly<Record<MeasureKind, readonly string[]>> = {
  length: ['one end of the length', 'its other end'],
  angle: ['a point on one leg of the angle', 'its corner', 'a point on the other leg'],
  diameter: ['a point on the line along the bone', 'another point along it', 'one edge', 'the edge across'],
};

/** A, B, C and so on. */
export const letterOf = (index: number): string => String.fromCharCode('A'.charCodeAt(0) + index);

export const isWhole = ({ kind, points }: HandMeasure): boolean => points.length === CLICK_WORDS[kind].length;

/** Null until every point is placed. */
export function measured({ kind, points }: HandMeasure, mmPerPixel: Measured): HandMeasured | null {
  const [a, b, c, d] = points;
  if (!a || !b) return null;
  if (kind === 'length') return lengthByHand(a, b, mmPerPixel);
  if (!c) return null;
  if (kind === 'angle') return angleByHand(a, b, c);
  return d ? diameterByHand([a, b], [c, d], mmPerPixel) : null;
}

/** The two points along the bone of a diameter, where the traced axis nearest to the place gives them. */
export function alongTraced(trace: Trace | null, [x, y]: Pixel): readonly [Pixel, Pixel] | null {
  const distances = (trace?.segments ?? []).map(({ axis, stations }) => ({
    axis,
    away: Math.min(...stations.map(({ centre }) => Math.hypot(centre[0] - x, centre[1] - y))),
  }));
  const nearest = distances.toSorted((a, b) => a.away - b.away)[0];
  return nearest ? [nearest.axis.from, nearest.axis.to] : null;
}

const DECIMALS = { mm: 2, px: 1, deg: 1 } as const;
const UNITS = { mm: 'mm', px: 'pixels', deg: '°' } as const;

/** `4.52 mm ± 0.05`, or why there is no value. */
export function resultWords({ value, sd, unit, why }: HandMeasured): string {
  if (value === null) return `not measured: ${why ?? 'the points do not say'}`;
  const decimals = DECIMALS[unit];
  const space = unit === 'deg' ? '' : ' ';
  return `${figure(value, decimals)}${space}${UNITS[unit]}${sd === null ? '' : ` ± ${figure(sd, decimals)}`}`;
}

/** What the record holds of one film. */
export const recordedMeasures = ({ handMeasures = [] }: FilmState): readonly HandMeasure[] =>
  handMeasures.map(({ value }) => ({ id: value.measureId, kind: value.measure, points: value.points }));

/** A whole measurement as it is recorded. */
export function asRecorded(filmId: string, one: HandMeasure, mmPerPixel: Measured): Payload<'hand-measured'> {
  const result = measured(one, mmPerPixel);
  const found =
    result === null || result.value === null ? null : { value: result.value, sd: result.sd, unit: result.unit };
  return { filmId, measureId: one.id, measure: one.kind, points: one.points, found };
}
