/**
 * A construct as short pieces of tube and rod seen from one side, farthest first: painted in that order each hides
 * what lies behind it. Screen axes: u to the right, v down (the bone stands, proximal end up), in mm.
 */
import { fragmentsOf } from '@bonewright/bone';
import type { Case } from '@bonewright/construct';
import { type PlacedPin, type Placement, type Point3, towards } from './placement.ts';
import { type Section, sectionAt } from './section.ts';

export interface Eye {
  /** Turned about the bone: 0 looks from caudal, medial to the right. */
  readonly turnDeg: number;
  /** Leaned towards the proximal end. */
  readonly leanDeg: number;
}

export type PieceOf = 'bone' | 'pin' | 'column' | 'im';
export type Flat = readonly [u: number, v: number];

export interface Piece {
  readonly of: PieceOf;
  /** Which pin, which fragment. */
  readonly index: number;
  readonly depth: number;
  /** Where along the bone its middle lies. */
  readonly alongMm: number;
  /** What it hides. */
  readonly face: readonly Flat[];
  /** Its edges. */
  readonly lines: readonly (readonly Flat[])[];
  /** A ring of bone across it, drawn lighter; empty for all else. */
  readonly ring: readonly Flat[];
  /** A round end: its radii along and across `tiltDeg`. */
  readonly disc: { readonly centre: Flat; readonly radii: Flat; readonly tiltDeg: number } | null;
}

type Project = (point: Point3) => readonly [u: number, v: number, depth: number];

const RING_MM = 4;
const PIECE_MM = 2.5;
const ARC_STEPS = 12;

/** `isSeenThrough` draws what is inside the bone too. */
export function spacePieces(patientCase: Case, placement: Placement, eye: Eye, isSeenThrough = false): Piece[] {
  const project = projectFrom(eye);
  const { fracture, bone } = patientCase;
  const { proximal, distal } = fragmentsOf(bone.lengthMm, fracture);
  const pieces = [
    ...tube(patientCase, ...proximal, 0, project, eye),
    ...tube(patientCase, ...distal, 1, project, eye),
    ...placement.columns.flatMap((column) => [
      ...along('column', column.line, column.diameterMm, project),
      ...[column.line[0]!, column.line.at(-1)!].map((end) => ball(column.diameterMm, end, project)),
    ]),
    ...placement.pins.flatMap((pin, i) => pinPieces(pin, i, placement, project, isSeenThrough)),
    ...imPieces(placement, project).filter(({ alongMm }) => isSeenThrough || alongMm < 0 || alongMm > bone.lengthMm),
  ];
  return pieces.toSorted((a, b) => a.depth - b.depth);
}

/** World [s, medial, cranial] to screen and depth; larger depth is nearer. */
export function projectFrom({ turnDeg, leanDeg }: Eye): Project {
  const [ct, st] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const [cl, sl] = [Math.cos((leanDeg * Math.PI) / 180), Math.sin((leanDeg * Math.PI) / 180)];
  return ([s, medial, cranial]) => {
    const u = medial * ct + cranial * st;
    const d = medial * st - cranial * ct;
    return [u, s * cl + d * sl, d * cl - s * sl];
  };
}

interface Ring {
  readonly sMm: number;
  readonly section: Section;
}

function tube(patientCase: Case, from: number, to: number, index: number, project: Project, eye: Eye): Piece[] {
  const count = Math.max(1, Math.round((to - from) / RING_MM));
  const rings = Array.from({ length: count + 1 }, (_, i): Ring => {
    const sMm = from + ((to - from) * i) / count;
    return { sMm, section: sectionAt(patientCase.bone.stations, sMm) };
  });
  const outlines = rings.map((ring) => ringOutline(ring, project, eye));
  const walls = outlines.slice(1).map((below, i): Piece => {
    const above = outlines[i]!;
    return {
      of: 'bone',
      index,
      alongMm: (rings[i]!.sMm + rings[i + 1]!.sMm) / 2,
      depth: (above.depth + below.depth) / 2,
      face: [above.left, ...above.front, above.right, below.right, ...below.front.toReversed(), below.left],
      lines: [
        [above.left, below.left],
        [above.right, below.right],
      ],
      ring: below.front,
      disc: null,
    };
  });
  const nearEnd = eye.leanDeg >= 0 ? outlines[0]! : outlines[outlines.length - 1]!;
  const cap: Piece = {
    of: 'bone',
    index,
    alongMm: eye.leanDeg >= 0 ? from : to,
    depth: nearEnd.depth,
    face: nearEnd.whole,
    lines: [[...nearEnd.whole, nearEnd.whole[0]!]],
    ring: [],
    disc: null,
  };
  return [...walls, cap];
}

/** A ring's visible edge points, its near arc and the whole of it. */
function ringOutline({ sMm, section }: Ring, project: Project, eye: Eye) {
  const [a, b] = [section.outerMm[0] / 2, section.outerMm[1] / 2];
  const [medialEye, cranialEye] = [Math.sin((eye.turnDeg * Math.PI) / 180), -Math.cos((eye.turnDeg * Math.PI) / 180)];
  const edge = Math.atan2(-b * medialEye, a * cranialEye);
  const at = (t: number): Flat => {
    const [u, v] = project([sMm, section.offset[0] + a * Math.cos(t), section.offset[1] + b * Math.sin(t)]);
    return [u, v];
  };
  const isNear = (t: number) => b * Math.cos(t) * medialEye + a * Math.sin(t) * cranialEye > 0;
  const start = isNear(edge + Math.PI / 2) ? edge : edge + Math.PI;
  const arc = (span: number) => Array.from({ length: ARC_STEPS + 1 }, (_, i) => at(start + (span * i) / ARC_STEPS));
  const front = arc(Math.PI);
  return {
    depth: project([sMm, ...section.offset])[2],
    left: front[0]!,
    right: front[front.length - 1]!,
    front,
    whole: [...front, ...arc(2 * Math.PI).slice(ARC_STEPS / 2 + 1)],
  };
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
    of,
    index,
    alongMm: (from[0] + to[0]) / 2,
    depth: (d1 + d2) / 2,
    face: [...upper, ...lower.toReversed()],
    lines: [upper, lower],
    ring: [],
    disc: null,
  };
}

/** The flat end of a rod that shows, an ellipse. */
function rodEnd(of: PieceOf, index: number, end: Point3, before: Point3, diameterMm: number, project: Project): Piece {
  const [u, v, depth] = project(end);
  const [u0, v0, d0] = project(before);
  const screen = Math.hypot(u - u0, v - v0);
  const whole = Math.hypot(screen, depth - d0) || 1;
  const across = diameterMm / 2;
  const tiltDeg = (Math.atan2(v - v0, u - u0) * 180) / Math.PI;
  const radii: Flat = [(across * Math.abs(depth - d0)) / whole, across];
  const disc = { centre: [u, v] as const, radii, tiltDeg };
  return { of, index, alongMm: end[0], depth: depth + 0.01, face: [], lines: [], ring: [], disc };
}

function ball(diameterMm: number, centre: Point3, project: Project): Piece {
  const [u, v, depth] = project(centre);
  const radii: Flat = [diameterMm / 2, diameterMm / 2];
  const disc = { centre: [u, v] as const, radii, tiltDeg: 0 };
  return {
    of: 'column',
    index: 0,
    alongMm: centre[0],
    depth: depth - diameterMm / 2,
    face: [],
    lines: [],
    ring: [],
    disc,
  };
}

/** Past the column, to either side, a pin shows this much of itself. */
const SHOWN_MM = 1;

/** What of a pin shows: past the far wall, from the near wall to the column, a little past the column. */
function pinPieces(
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

function imPieces({ im }: Placement, project: Project): Piece[] {
  if (!im) return [];
  return along('im', im.line, im.diameterMm, project).map((piece) => ({ ...piece, depth: piece.depth + 0.02 }));
}

function along(of: PieceOf, line: readonly Point3[], diameterMm: number, project: Project): Piece[] {
  return line.slice(1).flatMap((to, i) => rod(of, 0, line[i]!, to, diameterMm, project));
}
