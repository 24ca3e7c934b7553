/** The bone, its canal, the safe corridors on it and the skin round it, in short pieces between rings. */
import { fragmentsOf } from '@bonewright/bone';
import { type Case, tissueAt } from '@bonewright/construct';
import type { Placement } from '../placement.ts';
import { direction, type Pair, radiusAlong, sectionAt } from '../section.ts';
import { leanOf } from '../side-profile.ts';
import { type Eye, type Flat, type Project, projectFrom, towardsEye } from './eye.ts';
import { BARE, type Piece } from './piece.ts';

const RING_MM = 4;
const ARC_STEPS = 12;
/** A broken face's slant dies away over this much more than twice its own length. */
const SLANT_DIES_MM = 4;
const JUST_NEARER = 0.01;

interface Ring {
  readonly sMm: number;
  readonly offset: Pair;
  /** Half sizes, medial to lateral and cranial to caudal. */
  readonly half: Pair;
  /** How far the ring leans proximally at its edge towards the column. */
  readonly slantMm: number;
}

interface Tube {
  readonly fromMm: number;
  readonly toMm: number;
  readonly isBrokenAt: number | null;
}

/** Looks at one case from one side. */
export interface Look {
  readonly patientCase: Case;
  readonly aboutDeg: number;
  readonly eye: Eye;
  readonly project: Project;
}

export const lookAt = (patientCase: Case, { aboutDeg }: Placement, eye: Eye): Look => ({
  patientCase,
  aboutDeg,
  eye,
  project: projectFrom(eye),
});

export function bonePieces(look: Look): Piece[] {
  return fragments(look).flatMap((tube, index) => {
    const rings = ringsOf(look, tube, (section) => section.outerMm);
    const nearest = look.eye.leanDeg >= 0 ? rings[0]! : rings[rings.length - 1]!;
    return [...walls(look, rings, 'bone', index), cap(look, nearest, index)];
  });
}

/** The canal's outline where it was measured; it hides nothing. */
export function canalPieces(look: Look): Piece[] {
  return fragments(look).flatMap((tube, index) =>
    walls(
      look,
      ringsOf(look, tube, ({ canalMm }) => canalMm ?? [0, 0]),
      'canal',
      index,
    )
      .filter(({ alongMm }) => sectionAt(look.patientCase.bone.stations, alongMm).canalMm !== null)
      .map((piece) => ({ ...piece, depth: piece.depth + JUST_NEARER, face: [], ring: [] })),
  );
}

/** The skin, one depth all round as it was measured; it hides nothing. */
export function skinPieces(look: Look): Piece[] {
  const { patientCase } = look;
  if (!patientCase.softTissueMm?.length) return [];
  const whole: Tube = { fromMm: 0, toMm: patientCase.bone.lengthMm, isBrokenAt: null };
  const rings = ringsOf(look, whole, ({ outerMm: [medial, cranial] }, sMm) => {
    const depth = 2 * tissueAt(patientCase, sMm);
    return [medial + depth, cranial + depth];
  });
  return walls(look, rings, 'skin', 0).map((piece) => ({ ...piece, face: [] }));
}

/** The part of each safe corridor that faces the eye, as a band on the bone. */
export function corridorPieces(look: Look): Piece[] {
  const { patientCase } = look;
  return (patientCase.corridors ?? []).flatMap(({ fromMm, toMm, aboutDeg }) =>
    fragments(look).flatMap((tube, index) => {
      const [from, to] = [Math.max(fromMm, tube.fromMm), Math.min(toMm, tube.toMm)];
      if (to <= from) return [];
      const part = { fromMm: from, toMm: to, isBrokenAt: tube.isBrokenAt };
      return band(
        look,
        ringsOf(look, part, ({ outerMm }) => outerMm),
        aboutDeg,
        index,
      );
    }),
  );
}

function fragments({ patientCase: { bone, fracture } }: Look): Tube[] {
  const { proximal, distal } = fragmentsOf(bone.lengthMm, fracture);
  return [
    { fromMm: proximal[0], toMm: proximal[1], isBrokenAt: proximal[1] },
    { fromMm: distal[0], toMm: distal[1], isBrokenAt: distal[0] },
  ];
}

type SizeAt = (section: ReturnType<typeof sectionAt>, sMm: number) => Pair;

function ringsOf({ patientCase, aboutDeg }: Look, { fromMm, toMm, isBrokenAt }: Tube, sizeAt: SizeAt): Ring[] {
  const { stations } = patientCase.bone;
  const count = Math.max(1, Math.round((toMm - fromMm) / RING_MM));
  const lean =
    isBrokenAt === null || patientCase.fracture.comminuted
      ? 0
      : leanOf(patientCase, radiusAlong(sectionAt(stations, isBrokenAt).outerMm, aboutDeg));
  return Array.from({ length: count + 1 }, (_, i): Ring => {
    const sMm = fromMm + ((toMm - fromMm) * i) / count;
    const section = sectionAt(stations, sMm);
    const [medial, cranial] = sizeAt(section, sMm);
    const away = isBrokenAt === null ? 0 : Math.abs(sMm - isBrokenAt) / (2 * lean + SLANT_DIES_MM);
    const slantMm = lean * Math.max(0, 1 - away);
    return { sMm, offset: section.offset, half: [medial / 2, cranial / 2], slantMm };
  });
}

/** The point of a ring at an angle of its own, 0 medial, a quarter turn cranial. */
function onRing({ aboutDeg, project }: Look, { sMm, offset, half, slantMm }: Ring, t: number): Flat {
  const [medial, cranial] = [half[0] * Math.cos(t), half[1] * Math.sin(t)];
  const [c, d] = direction(aboutDeg);
  const wall = radiusAlong([2 * half[0], 2 * half[1]], aboutDeg) || 1;
  const s = sMm - slantMm * ((medial * c + cranial * d) / wall);
  const [u, v] = project([s, offset[0] + medial, offset[1] + cranial]);
  return [u, v];
}

/** Whether the ring faces the eye at that angle. */
function isFacing({ eye }: Look, { half: [a, b] }: Ring, t: number): boolean {
  const [medial, cranial] = towardsEye(eye);
  return b * Math.cos(t) * medial + a * Math.sin(t) * cranial > 0;
}

function arc(look: Look, ring: Ring, start: number, span: number): Flat[] {
  return Array.from({ length: ARC_STEPS + 1 }, (_, i) => onRing(look, ring, start + (span * i) / ARC_STEPS));
}

/** Half a turn of the ring, from one visible edge over the near side to the other. */
function nearHalf(look: Look, ring: Ring): Flat[] {
  const [medial, cranial] = towardsEye(look.eye);
  const [a, b] = ring.half;
  const edge = Math.atan2(-b * medial, a * cranial);
  const start = isFacing(look, ring, edge + Math.PI / 2) ? edge : edge + Math.PI;
  return arc(look, ring, start, Math.PI);
}

const depthOf = ({ project }: Look, { sMm, offset }: Ring): number => project([sMm, ...offset])[2];

function walls(look: Look, rings: readonly Ring[], of: Piece['of'], index: number): Piece[] {
  const halves = rings.map((ring) => nearHalf(look, ring));
  return halves.slice(1).map((below, i) => {
    const above = halves[i]!;
    const [upper, lower] = [rings[i]!, rings[i + 1]!];
    return {
      ...BARE,
      of,
      index,
      alongMm: (upper.sMm + lower.sMm) / 2,
      depth: (depthOf(look, upper) + depthOf(look, lower)) / 2,
      face: [...above, ...below.toReversed()],
      lines: [
        [above[0]!, below[0]!],
        [above.at(-1)!, below.at(-1)!],
      ],
      ring: below,
    };
  });
}

/** The end that faces the eye. */
function cap(look: Look, ring: Ring, index: number): Piece {
  const whole = arc(look, ring, 0, 2 * Math.PI);
  return { ...BARE, of: 'bone', index, alongMm: ring.sMm, depth: depthOf(look, ring), face: whole, lines: [whole] };
}

function band(look: Look, rings: readonly Ring[], [fromDeg, toDeg]: Pair, index: number): Piece[] {
  const angles = Array.from({ length: ARC_STEPS + 1 }, (_, i) => fromDeg + ((toDeg - fromDeg) * i) / ARC_STEPS);
  return rings.slice(1).flatMap((lower, i) => {
    const upper = rings[i]!;
    const seen = angles.map((deg) => atDirection(lower, deg)).filter((t) => isFacing(look, lower, t));
    if (seen.length < 2) return [];
    const edge = (ring: Ring) => seen.map((t) => onRing(look, ring, t));
    const [above, below] = [edge(upper), edge(lower)];
    return {
      ...BARE,
      of: 'corridor' as const,
      index,
      alongMm: (upper.sMm + lower.sMm) / 2,
      depth: (depthOf(look, upper) + depthOf(look, lower)) / 2 + JUST_NEARER,
      face: [...above, ...below.toReversed()],
      lines: [
        [above[0]!, below[0]!],
        [above.at(-1)!, below.at(-1)!],
      ],
    };
  });
}

/** A ring's own angle where a line from its middle in that direction leaves it. */
function atDirection({ half: [a, b] }: Ring, deg: number): number {
  const [medial, cranial] = direction(deg);
  return Math.atan2(cranial * a, medial * b);
}
