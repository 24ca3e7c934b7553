/** The axis of one column, and how each pin enters it. */
import { fitted } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Vec3 } from '@bonewright/frame';
import type { ColumnFigures, Figures, RodFigures } from '../model/figures.ts';
import { dot, lengthOf, minus, plus, radial, unit } from './vectors.ts';

export interface PinEntry {
  /** Signed distances along the pin from its crossing of the bone's axis (negative on the far side). */
  readonly surfaceMm: number;
  /** To where the pin is flexible: some way past the column's surface. */
  readonly heldMm: number;
  /** Length inside the column. */
  readonly embeddedMm: number;
  /** The column's axis at this pin. */
  readonly axis: Vec3;
}

interface BarePin {
  readonly direction: Vec3;
  readonly crossing: Vec3;
}

/**
 * The column's axis through the pins, given how far along each pin its height is wanted: straight, in the plane of the
 * bone's axis and the frame's direction, unless a pin would miss it; then from pin to pin.
 */
export function columnAxis(
  pins: readonly BarePin[],
  figures: Figures,
  column: ColumnFigures,
  wantedMm: readonly number[],
  aboutDeg: number,
) {
  const sense = column.side === 'far' ? -1 : 1;
  const points = pins.map((pin, i) => plus(pin.crossing, pin.direction, sense * wantedMm[i]!));
  const line = straightLine(pins, points, aboutDeg);
  const meetings = pins.map((pin) => meet(pin, line));
  const radius = column.diameterMm / 2;
  const isStraight = meetings.every(({ missMm }, i) => missMm + figures.pins[i]!.diameterMm / 2 <= radius);
  const entries = pins.map((pin, i) => {
    const bent = { alongMm: sense * wantedMm[i]!, missMm: 0, axis: points[i]! };
    const meeting = isStraight ? meetings[i]! : bent;
    return entry(pin, figures.pins[i]!, column, meeting, line.direction);
  });
  return { entries, isStraight, at: (sMm: number) => plus(line.through, line.direction, sMm / line.direction[0]) };
}

export interface RodEnd {
  /** On the bone's or canal's axis, and the way from there to the column. */
  readonly crossing: Vec3;
  readonly direction: Vec3;
  readonly surfaceMm: number;
  readonly heldMm: number;
  readonly embeddedMm: number;
}

/** A rod that runs square from `from` to a point of the column's axis. */
export function squareEnd(from: Vec3, axis: Vec3, rod: RodFigures, column: ColumnFigures): RodEnd {
  const way = minus(axis, from);
  const surfaceMm = Math.max(0, lengthOf(way) - column.diameterMm / 2);
  const heldMm = surfaceMm + Math.min(flexibleDepth(rod, column), column.diameterMm);
  return { crossing: from, direction: unit(way), surfaceMm, heldMm, embeddedMm: column.diameterMm };
}

interface Line {
  readonly through: Vec3;
  readonly direction: Vec3;
}

/** Least-squares line: its height from the wanted points, sideways from where the pins cross the bone's axis. */
function straightLine(pins: readonly BarePin[], points: readonly Vec3[], aboutDeg: number): Line {
  const up = radial(aboutDeg);
  const across = radial(aboutDeg + 90);
  const height = fitted(
    points.map((p) => p[0]),
    points.map((p) => dot(p, up)),
  );
  const aside = fitted(
    pins.map((p) => p.crossing[0]),
    pins.map((p) => dot(p.crossing, across)),
  );
  const at = (x: number): Vec3 => plus(plus([x, 0, 0], up, height(x)), across, aside(x));
  return { through: at(0), direction: unit(minus(at(1), at(0))) };
}

/** Nearest points of a pin's line and the column's line. */
function meet(pin: BarePin, line: Line) {
  const between = minus(pin.crossing, line.through);
  const b = dot(pin.direction, line.direction);
  const square = 1 - b * b;
  const d = dot(pin.direction, between);
  const e = dot(line.direction, between);
  const alongMm = (b * e - d) / square;
  const axis = plus(line.through, line.direction, (e - b * d) / square);
  return { alongMm, axis, missMm: lengthOf(minus(plus(pin.crossing, pin.direction, alongMm), axis)) };
}

function entry(
  pin: BarePin,
  figures: RodFigures,
  column: ColumnFigures,
  meeting: { readonly alongMm: number; readonly missMm: number; readonly axis: Vec3 },
  direction: Vec3,
): PinEntry {
  const sense = column.side === 'far' ? -1 : 1;
  const square = Math.sqrt(Math.max(0, 1 - dot(pin.direction, direction) ** 2));
  const half = Math.sqrt(Math.max(0, (column.diameterMm / 2) ** 2 - meeting.missMm ** 2)) / square;
  const depth = Math.min(flexibleDepth(figures, column), 2 * half);
  const surfaceMm = meeting.alongMm - sense * half;
  return { surfaceMm, heldMm: surfaceMm + sense * depth, embeddedMm: 2 * half, axis: meeting.axis };
}

/** h = 0.31 d (E pin / E column)^(1/3); a tube counts with the modulus of a solid pin of its bending stiffness. */
function flexibleDepth({ diameterMm, boreMm, youngMPa }: RodFigures, column: ColumnFigures): number {
  const solid = youngMPa * (1 - (boreMm / diameterMm) ** 4);
  return value('interface.putty.depth') * diameterMm * Math.cbrt(solid / column.youngMPa);
}
