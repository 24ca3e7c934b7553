/**
 * Where a construct's pins, columns and IM pin lie in space: both views of the construct as it is built for the
 * solver, put together. Points are [s, medial, cranial] in mm; s along the bone from its proximal end, 0 0 on the
 * line between the bone's ends.
 */
import { type Case, type Construct, type FigurePoint, type ViewFigure, viewFigures } from '@bonewright/construct';
import { direction, sectionAt } from './section.ts';

export type Point3 = readonly [sMm: number, medialMm: number, cranialMm: number];

export interface PlacedPin {
  readonly diameterMm: number;
  /** Past the far wall. */
  readonly tip: Point3;
  readonly farWall: Point3;
  /** Where its line crosses the bone's axis. */
  readonly axis: Point3;
  readonly nearWall: Point3;
  /** Where it enters the near column; its end where there is none. */
  readonly columnNear: Point3;
  /** At the column's outer face. */
  readonly end: Point3;
}

export interface PlacedColumn {
  readonly side: 'near' | 'far';
  readonly diameterMm: number;
  /** Its axis, the round ends left out. */
  readonly line: readonly Point3[];
}

export interface PlacedIm {
  readonly diameterMm: number;
  /** Outside end first; bent over to the column where tied in. */
  readonly line: readonly Point3[];
}

export interface Placement {
  /** Direction of the frame's plane about the bone. */
  readonly aboutDeg: number;
  readonly pins: readonly PlacedPin[];
  readonly columns: readonly PlacedColumn[];
  readonly im: PlacedIm | null;
  readonly keepOuts: ViewFigure['keepOuts'];
}

/** Places everything of a construct. The drawer must hold what the construct names. */
export function place(patientCase: Case, construct: Construct): Placement {
  const [front, side] = viewFigures(patientCase, construct);
  if (!front || !side) throw new Error('a construct has two views');
  const columns = front.columns.map((column, i) => ({
    side: column.side,
    diameterMm: column.diameterMm,
    line: joined(column.line, side.columns[i]!.line),
  }));
  const near = columns.find((column) => column.side === 'near');
  const pins = front.pins.map((pin, i) => placePin(patientCase, pin, side.pins[i]!, near?.diameterMm ?? 0));
  const { aboutDeg } = meanDirection(construct);
  return { aboutDeg, pins, columns, im: placeIm(front.im, side.im), keepOuts: front.keepOuts };
}

type PinFigure = ViewFigure['pins'][number];

function placePin({ bone }: Case, front: PinFigure, side: PinFigure, columnMm: number): PlacedPin {
  const [tip, end] = joined(front.line, side.line);
  const [nearWall] = joined([front.nearWall], [side.nearWall]);
  const axis: Point3 = [front.sMm, ...sectionAt(bone.stations, front.sMm).offset];
  if (!tip || !end || !nearWall) throw new Error('a pin has two ends and a near wall');
  return {
    diameterMm: front.diameterMm,
    tip,
    farWall: towards(axis, nearWall, -distance(axis, nearWall)),
    axis,
    nearWall,
    columnNear: towards(end, nearWall, columnMm / slopeOf(tip, end)),
    end,
  };
}

function placeIm(front: ViewFigure['im'], side: ViewFigure['im']): PlacedIm | null {
  if (!front || !side) return null;
  const { diameterMm } = front;
  const bend = joined(front.bend ?? [], side.bend ?? []).toReversed();
  const line = joined(front.line, side.line);
  return { diameterMm, line: bend.length > 0 ? bent(bend, line.slice(1)) : line };
}

/** Corners are cut so often: enough to look bent, not broken. */
const CUTS = 3;
/** A long straight side stays straight but for this much. */
const MOST_CUT_MM = 1.5;

/** Into the column from outside, over, and down the bone, its corners bent round. */
function bent(bend: readonly Point3[], straight: readonly Point3[]): Point3[] {
  let line = [...bend, ...straight];
  for (let cut = 0; cut < CUTS; cut += 1) line = cornersCut(line);
  return line;
}

/** Each corner replaced by two points a little along its sides. */
function cornersCut(line: readonly Point3[]): Point3[] {
  const pieces = line.slice(1).map((to, i) => {
    const from = line[i]!;
    const cut = Math.min(distance(from, to) / 4, MOST_CUT_MM);
    return [towards(from, to, cut), towards(to, from, cut)] as const;
  });
  return [line[0]!, ...pieces.flatMap((pair) => [...pair]).slice(1, -1), line.at(-1)!];
}

/** Points of the craniocaudal view and the same points of the mediolateral view. */
function joined(front: readonly FigurePoint[], side: readonly FigurePoint[]): Point3[] {
  return front.map(([s, medial], i) => [s, medial, side[i]?.[1] ?? 0]);
}

export const distance = (a: Point3, b: Point3): number => Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);

/** The point so many mm from one point on the way to another; negative goes the other way. */
export function towards(from: Point3, to: Point3, mm: number): Point3 {
  const t = mm / (distance(from, to) || 1);
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
}

/** How square a pin stands to the bone: 1 is square. */
function slopeOf(tip: Point3, end: Point3): number {
  return Math.hypot(end[1] - tip[1], end[2] - tip[2]) / (distance(tip, end) || 1) || 1;
}

/** Mean direction of the pins, turned the short way round. */
function meanDirection({ pins }: Construct): { readonly aboutDeg: number } {
  const ways = pins.map(({ aboutDeg }) => direction(aboutDeg));
  const medial = ways.reduce((sum, [m]) => sum + m, 0);
  const cranial = ways.reduce((sum, [, c]) => sum + c, 0);
  return { aboutDeg: (Math.atan2(cranial, medial) * 180) / Math.PI };
}
