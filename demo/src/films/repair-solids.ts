/** What a repair adds to a limb's film: pins, IM pin, putty, and the callus of that day. */
import { type Frame3, rod, type Solid, shaft, toWorld, type Vector } from '@bonewright/film';
import type { DemoLimb } from './bones.ts';

/** Places of the bone: along it from its proximal end, then towards medial and cranial, mm. */
export type BonePlace = readonly [sMm: number, medialMm: number, cranialMm: number];

export interface RepairRod {
  readonly line: readonly BonePlace[];
  readonly diameterMm: number;
  readonly of: 'steel' | 'putty';
}

export interface Repair {
  /** Days after the operation. */
  readonly day: number;
  readonly rods: readonly RepairRod[];
  /** How far the callus has come: 0 none, 1 as dense as bone. */
  readonly callus: number;
}

const ATTENUATION = { steel: 2.9, putty: 0.05 };
const BONE = 0.1;
/** Of the callus: half length and half thickness in half widths of the bone, and how dense it is beside bone. */
const CALLUS_LENGTH = 2.4;
const CALLUS_THICKNESS = 1.75;
const CALLUS_DENSITY = 0.55;
const LEAST_ROUND = 0.02;
const LEAST_ROD_MM = 0.01;

export function repairSolids({ rods, callus }: Repair, limb: DemoLimb, whole: Frame3): Solid[] {
  const { bone } = limb;
  const at = ([s, medial, cranial]: BonePlace): Vector => toWorld(whole, [medial, cranial, s - bone.proximalMm]);
  const metal = rods.flatMap(({ line, diameterMm, of }) =>
    line.slice(1).flatMap((end, i) => {
      const from = line[i]!;
      const isPoint = Math.hypot(end[0] - from[0], end[1] - from[1], end[2] - from[2]) < LEAST_ROD_MM;
      return isPoint ? [] : [rod(at(from), at(end), diameterMm, ATTENUATION[of])];
    }),
  );
  return callus > 0 ? [...metal, ...callusSolids(limb, whole, callus)] : metal;
}

/** A spindle round the fracture, and what fills the gap itself, later than the spindle. */
function callusSolids({ bone, shiftMm }: DemoLimb, whole: Frame3, callus: number): Solid[] {
  const half = CALLUS_LENGTH * bone.a;
  // A section of no size has no inside.
  const round = (z: number) => Math.sqrt(Math.max(LEAST_ROUND, 1 - (z / half) ** 2));
  const middle = { cx: shiftMm[0] / 2, cy: shiftMm[1] / 2 };
  const thick = 1 + (CALLUS_THICKNESS - 1) * callus ** (1 / 2);
  const spindle = (z: number) => ({ ...middle, a: bone.a * thick * round(z), b: bone.b * thick * round(z) });
  return [
    shaft(whole, [-half, half], spindle, BONE * CALLUS_DENSITY * callus, 0, true),
    shaft(whole, [0, shiftMm[2]], () => ({ ...middle, a: bone.a, b: bone.b }), BONE * callus ** 2, 0, true),
  ];
}
