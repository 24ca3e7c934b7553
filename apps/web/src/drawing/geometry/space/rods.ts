/** Round rods in space: pins, IM pin, columns. */
import { type PlacedPin, type Placement, type Point3, towards } from '../placement.ts';
import type { Flat, Project } from './eye.ts';
import { BARE, type Piece, type PieceOf } from './piece.ts';

const PIECE_MM = 2.5;
/** Past the column, to either side, a pin shows this much of itself. */
const SHOWN_MM = 1;
/** What lies in the same place is painted after it by so little. */
const JUST_NEARER = 0.01;

export function columnPieces({ columns }: Placement, project: Project): Piece[] {
  return columns.flatMap((column) => [
    ...along('column', column.line, column.diameterMm, project),
    ...[column.line[0]!, column.line.at(-1)!].map((end) => ball(column.diameterMm, end, project)),
  ]);
}

export function imPieces({ im }: Placement, project: Project): Piece[] {
  if (!im) return [];
  const pieces = along('im', im.line, im.diameterMm, project);
  return pieces.map((piece) => ({ ...piece, depth: piece.depth + 2 * JUST_NEARER }));
}

/** What of a pin shows: past the far wall, from the near wall to the column, a little past the column. */
export function pinPieces(
  pin: PlacedPin,
  index: number,
  { columns }: Placement,
  project: Project,
  isSeenThrough: boolean,
): Piece[] {
  const outer = columns.length > 0 ? towards(pin.end, pin.columnNear, -SHOWN_MM) : pin.end;
  const parts: (readonly [Point3, Point3])[] = [
    [pin.farWall, pin.tip],
    [pin.nearWall, pin.columnNear],
    [pin.end, outer],
    ...(isSeenThrough ? [[pin.farWall, pin.nearWall] as const] : []),
  ];
  return [
    ...parts.flatMap(([from, to]) => rod('pin', index, from, to, pin.diameterMm, project)),
    rodEnd('pin', index, pin.tip, pin.farWall, pin.diameterMm, project),
    rodEnd('pin', index, outer, pin.columnNear, pin.diameterMm, project),
  ];
}

function along(of: PieceOf, line: readonly Point3[], diameterMm: number, project: Project): Piece[] {
  return line.slice(1).flatMap((to, i) => rod(of, 0, line[i]!, to, diameterMm, project));
}

function rod(of: PieceOf, index: number, from: Point3, to: Point3, diameterMm: number, project: Project): Piece[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const count = Math.max(1, Math.ceil(length / PIECE_MM));
  const at = (i: number): Point3 => mixed(from, to, i / count);
  return Array.from({ length: count }, (_, i) => rodPiece(of, index, at(i), at(i + 1), diameterMm, project));
}

const mixed = (a: Point3, b: Point3, t: number): Point3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

function rodPiece(of: PieceOf, index: number, from: Point3, to: Point3, diameterMm: number, project: Project): Piece {
  const [u1, v1, d1] = project(from);
  const [u2, v2, d2] = project(to);
  const length = Math.hypot(u2 - u1, v2 - v1) || 1;
  const [nu, nv] = [(-(v2 - v1) / length) * (diameterMm / 2), ((u2 - u1) / length) * (diameterMm / 2)];
  const upper: Flat[] = [
    [u1 + nu, v1 + nv],
    [u2 + nu, v2 + nv],
  ];
  const lower: Flat[] = [
    [u1 - nu, v1 - nv],
    [u2 - nu, v2 - nv],
  ];
  return {
    ...BARE,
    of,
    index,
    alongMm: (from[0] + to[0]) / 2,
    depth: (d1 + d2) / 2,
    face: [...upper, ...lower.toReversed()],
    lines: [upper, lower],
  };
}

/** The flat end of a rod that shows, an ellipse. */
function rodEnd(of: PieceOf, index: number, end: Point3, before: Point3, diameterMm: number, project: Project): Piece {
  const [u, v, depth] = project(end);
  const [u0, v0, d0] = project(before);
  const whole = Math.hypot(u - u0, v - v0, depth - d0) || 1;
  const across = diameterMm / 2;
  const tiltDeg = (Math.atan2(v - v0, u - u0) * 180) / Math.PI;
  const radii: Flat = [(across * Math.abs(depth - d0)) / whole, across];
  const disc = { centre: [u, v] as const, radii, tiltDeg };
  return { ...BARE, of, index, alongMm: end[0], depth: depth + JUST_NEARER, disc };
}

function ball(diameterMm: number, centre: Point3, project: Project): Piece {
  const [u, v, depth] = project(centre);
  const radius = diameterMm / 2;
  const disc = { centre: [u, v] as const, radii: [radius, radius] as const, tiltDeg: 0 };
  return { ...BARE, of: 'column', index: 0, alongMm: centre[0], depth: depth - radius, disc };
}
