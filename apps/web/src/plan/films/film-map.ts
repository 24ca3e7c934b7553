/**
 * From the bone's own millimetres to a film's pixels, the distal part moved to where it lies reduced.
 * Points on the bone are [s, w] in mm, w medial or cranial positive; pixels are [column, row].
 */
import type { FilmState } from '@bonewright/casebook';
import type { Pixel, ReductionMove, Trace } from '@bonewright/film';
import { asCorrected } from '../../films/correct/corrections.ts';
import { type Lever, moved } from './fragment-move.ts';

export interface FilmMap {
  readonly mmPerPixel: number;
  /** Place of [s, w] on the film as it looks reduced. */
  readonly pixel: (sMm: number, wMm: number) => Pixel;
  /** Turns and shifts the distal part's pixels to their reduced place, an SVG transform. */
  readonly reduce: string;
  /** Corners of the film's half on either side of the fracture, in the film's own pixels. */
  readonly proximalHalf: readonly Pixel[];
  readonly distalHalf: readonly Pixel[];
  readonly fracture: readonly [Pixel, Pixel] | null;
  /** Walls as found, of the proximal and of the distal part, in the film's own pixels. */
  readonly walls: readonly [FoundWalls, FoundWalls];
  /** By how much the distal part is turned and shifted from where the film shows it. */
  readonly movedDeg: number | null;
  readonly movedMm: number | null;
  readonly lever: Lever;
  /** Where the bone's distal end lies before it is moved. */
  readonly distalEnd: Pixel;
}

export interface FoundWalls {
  readonly outer: readonly (readonly Pixel[])[];
  readonly canal: readonly (readonly Pixel[])[];
}

interface Axis {
  readonly origin: Pixel;
  readonly along: Pixel;
}

const plus = (a: Pixel, b: Pixel, t = 1): Pixel => [a[0] + b[0] * t, a[1] + b[1] * t];
const minus = (a: Pixel, b: Pixel): Pixel => [a[0] - b[0], a[1] - b[1]];
const dot = (a: Pixel, b: Pixel): number => a[0] * b[0] + a[1] * b[1];
const unit = (v: Pixel): Pixel => [v[0] / Math.hypot(...v), v[1] / Math.hypot(...v)];
const degrees = (v: Pixel): number => (Math.atan2(v[1], v[0]) * 180) / Math.PI;

/**
 * Null where the film has not been traced far enough to draw on. `move`: as the distal part was moved on the screen;
 * absent, it is laid in one line with the proximal part.
 */
export function filmMap(film: FilmState, lengthMm: number, move?: ReductionMove): FilmMap | null {
  const trace = asCorrected(film);
  const clicks = film.clicks?.value;
  const mmPerPixel = trace?.mmPerPixel.value;
  const first = clicks?.segments[0];
  const last = clicks?.segments.at(-1);
  if (!trace || !clicks || !mmPerPixel || !first || !last) return null;
  const proximal = axisFrom(trace, 0, clicks.boneEnds?.[0] ?? first.from);
  const distal = axisFrom(trace, trace.segments.length - 1, clicks.boneEnds?.[1] ?? last.to);
  if (!proximal || !distal) return null;
  const across = acrossOf(proximal.along, clicks.columnTowards);
  const line = film.fractureLine?.value ?? null;
  const lever = { along: proximal.along, across, pivot: pivotOf(proximal, distal, line), mmPerPixel };
  const view = film.view.value === 'mediolateral' ? 1 : 0;
  const kept = move && moved(lever, move, view);
  // What is planned on runs straight from end to end of the bone as it lies.
  const along = kept ? unit(minus(kept.place(distal.origin), proximal.origin)) : proximal.along;
  const side = kept ? acrossOf(along, clicks.columnTowards) : across;
  const pixel = (sMm: number, wMm: number): Pixel =>
    plus(plus(proximal.origin, along, sMm / mmPerPixel), side, wMm / mmPerPixel);
  const end = pixel(lengthMm, 0);
  const turn = degrees(proximal.along) - degrees(distal.along);
  const inLine = `translate(${end[0]} ${end[1]}) rotate(${turn}) translate(${-distal.origin[0]} ${-distal.origin[1]})`;
  return {
    mmPerPixel,
    pixel,
    reduce: kept ? kept.transform : inLine,
    proximalHalf: line ? halfPlane(line, proximal.origin) : [],
    distalHalf: line ? halfPlane(line, distal.origin) : [],
    fracture: line,
    walls: [wallsOf(trace.segments[0]), wallsOf(trace.segments[1])],
    movedDeg: move ? (move.angulationDeg?.[view] ?? 0) : trace.angulationDeg.value,
    movedMm: move ? Math.hypot(move.translationMm?.[view] ?? 0, move.lengthMm ?? 0) : trace.translationMm.value,
    lever,
    distalEnd: distal.origin,
  };
}

/** A traced axis with its origin where the bone's end was clicked. */
function axisFrom(trace: Trace, index: number, click: Pixel): (Axis & { readonly from: Pixel }) | null {
  const segment = trace.segments[index];
  if (!segment) return null;
  const { from, to } = segment.axis;
  const way = minus(to, from);
  if (Math.hypot(...way) === 0) return null;
  const along = unit(way);
  return { from, along, origin: plus(from, along, dot(minus(click, from), along)) };
}

/** Where the distal axis passes the level at which the fracture line crosses the proximal axis; without a line, its start. */
function pivotOf(proximal: Axis, distal: Axis & { readonly from: Pixel }, line: FilmMap['fracture']): Pixel {
  if (!line) return distal.from;
  const level = crossing(proximal, line[0], minus(line[1], line[0]));
  const across: Pixel = [-proximal.along[1], proximal.along[0]];
  return level ? (crossing(distal, level, across) ?? distal.from) : distal.from;
}

/** Where an axis meets the line through `at`; null where they run side by side. */
function crossing({ origin, along }: Axis, at: Pixel, way: Pixel): Pixel | null {
  const square: Pixel = [-way[1], way[0]];
  const meets = dot(along, square);
  return Math.abs(meets) < 1e-9 ? null : plus(origin, along, dot(minus(at, origin), square) / meets);
}

/** Square to the axis, towards medial or cranial. */
function acrossOf(along: Pixel, columnTowards: string): Pixel {
  const turned: Pixel = [-along[1], along[0]];
  const pointsRight = columnTowards === 'medial' || columnTowards === 'cranial';
  return turned[0] > 0 === pointsRight ? turned : [-turned[0], -turned[1]];
}

/** Lines along each wall, broken where none was found. */
function wallsOf(segment: Trace['segments'][number] | undefined): FoundWalls {
  const lines = (wall: 'outer' | 'canal') =>
    ([0, 1] as const).flatMap((side) => runs(segment?.stations.map(({ walls }) => walls[wall]?.[side] ?? null) ?? []));
  return { outer: lines('outer'), canal: lines('canal') };
}

function runs(points: readonly (Pixel | null)[]): Pixel[][] {
  const found: Pixel[][] = [[]];
  for (const point of points) {
    if (point) found.at(-1)?.push(point);
    else found.push([]);
  }
  return found.filter((run) => run.length > 1);
}

const FAR_PX = 20_000;

/** A square far larger than any film on that side of the line on which `inside` lies. */
function halfPlane([from, to]: readonly [Pixel, Pixel], inside: Pixel): Pixel[] {
  const way = minus(to, from);
  const length = Math.hypot(...way) || 1;
  const along: Pixel = [way[0] / length, way[1] / length];
  const turned: Pixel = [-along[1], along[0]];
  const side = dot(minus(inside, from), turned) > 0 ? 1 : -1;
  const [a, b] = [plus(from, along, -FAR_PX), plus(from, along, FAR_PX)];
  return [a, b, plus(b, turned, side * FAR_PX), plus(a, turned, side * FAR_PX)];
}
