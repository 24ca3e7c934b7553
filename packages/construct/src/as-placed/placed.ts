/**
 * What is known in theatre so far: pins that are in, places where one would not go, pins left out. Pins are numbered
 * as in the plan, 1 for P1, and keep their number whatever becomes of the others.
 */
import { InputError } from '@bonewright/fault';
import type { Case, Construct } from '../model/case-file.ts';

type Pin = Construct['pins'][number];

/** Where a pin really went. */
export interface PlacedPin {
  readonly pin: number;
  readonly sMm: number;
  readonly aboutDeg: number;
  readonly tiltDeg: number;
  /** 1 where it stops short of the far wall. */
  readonly cortices: 1 | 2;
}

export interface InTheatre {
  readonly placed: readonly PlacedPin[];
  /** Places where a pin could not be put; it is planned elsewhere. */
  readonly refused: readonly { readonly pin: number; readonly sMm: number }[];
  /** Pins that will not be placed at all. */
  readonly leftOut: readonly number[];
}

/** Where a distance is measured from: an end of the bone, or another pin on the way to that end. */
export type Landmark =
  | { readonly from: 'proximal end' | 'distal end' }
  | { readonly from: 'pin'; readonly atMm: number; readonly towards: 'proximal' | 'distal' };

/** Where a pin stands that was measured `distanceMm` from a landmark, in mm along the bone. Throws InputError off the bone. */
export function placeFrom(lengthMm: number, landmark: Landmark, distanceMm: number): number {
  const sMm = alongFrom(lengthMm, landmark, distanceMm);
  if (distanceMm >= 0 && sMm >= 0 && sMm <= lengthMm) return sMm;
  throw new InputError(`${distanceMm} mm from there is off the bone`, 'distanceMm', `the bone is ${lengthMm} mm long`);
}

function alongFrom(lengthMm: number, landmark: Landmark, distanceMm: number): number {
  if (landmark.from === 'pin') return landmark.atMm + (landmark.towards === 'distal' ? distanceMm : -distanceMm);
  return landmark.from === 'proximal end' ? distanceMm : lengthMm - distanceMm;
}

/** Throws InputError where a number is not of the plan, or a pin is said to be two things at once. */
export function checkTheatre({ bone }: Case, { pins }: Construct, { placed, refused, leftOut }: InTheatre): void {
  const known = (pin: number, path: string) => {
    if (Number.isInteger(pin) && pin >= 1 && pin <= pins.length) return;
    throw new InputError(`there is no P${pin} in the plan`, path, `it has P1 to P${pins.length}`);
  };
  placed.forEach(({ pin, sMm }, i) => {
    known(pin, `placed.${i}.pin`);
    if (placed.findIndex((other) => other.pin === pin) !== i)
      throw new InputError(`P${pin} is placed twice`, `placed.${i}.pin`, 'give where it stands now');
    if (leftOut.includes(pin))
      throw new InputError(`P${pin} is placed and left out`, `placed.${i}.pin`, 'give one of the two');
    if (!(sMm >= 0 && sMm <= bone.lengthMm))
      throw new InputError(`P${pin} at ${sMm} mm is off the bone`, `placed.${i}.sMm`, `give 0 to ${bone.lengthMm}`);
  });
  refused.forEach(({ pin }, i) => {
    known(pin, `refused.${i}.pin`);
  });
  leftOut.forEach((pin, i) => {
    known(pin, `leftOut.${i}`);
  });
}

/** The plan's pin as it stands. */
export function asItStands(planned: Pin, placed: PlacedPin): Pin {
  const { sMm, aboutDeg, tiltDeg, cortices } = placed;
  return { ...planned, sMm, aboutDeg, tiltDeg, cortices };
}

/** Differences that no hand can measure. */
const SAME_MM = 0.05;
const SAME_DEG = 0.5;

/** Whether a pin went where the plan had it. */
export function isAsPlanned(planned: Pin, placed: PlacedPin): boolean {
  return (
    Math.abs(planned.sMm - placed.sMm) <= SAME_MM &&
    Math.abs(planned.aboutDeg - placed.aboutDeg) <= SAME_DEG &&
    Math.abs(planned.tiltDeg - placed.tiltDeg) <= SAME_DEG &&
    (planned.cortices ?? 2) === placed.cortices
  );
}
