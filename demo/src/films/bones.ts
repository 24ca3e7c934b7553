/** The bones of the invented patients: sizes such as their kind has, every figure invented. All mm and degrees. */
import type { LongBone } from '@bonewright/film';

/** One broken limb as it lies on the table. Local axes: x medial, y cranial, z distal, origin at the fracture. */
export interface DemoLimb {
  readonly key: 'squirrel' | 'owl' | 'hedgehog' | 'rabbit';
  readonly bone: LongBone;
  /** Where the distal fragment has gone: shift, and its turn towards medial and cranial. */
  readonly shiftMm: readonly [number, number, number];
  readonly turnDeg: readonly [number, number];
  /** Slope of the fracture across and along the beam of the craniocaudal view. */
  readonly obliquityDeg: readonly [number, number];
  /** Splint bone beside it: centre (medial, cranial) and half width at its two ends; none for a femur. */
  readonly second: {
    readonly proximal: readonly [number, number, number];
    readonly distal: readonly [number, number, number];
  } | null;
  /** Half widths of the limb at its proximal end, at the fracture and at its distal end. */
  readonly limb: readonly [number, number, number];
  readonly pitchMm: number;
  readonly heightMm: number;
  readonly ballMm: number;
  /** Where the ball lies from the fracture: across (film) and along. */
  readonly ballAt: readonly [number, number];
  readonly seed: number;
}

const usual = { turn: 0.15, offA: 0.04, offB: -0.05, attenuation: 0.1 };

export const limbs: readonly DemoLimb[] = [
  {
    key: 'squirrel',
    bone: {
      ...usual,
      proximalMm: 27,
      distalMm: 25.5,
      a: 1.78,
      b: 1.55,
      taper: -0.004,
      canalShare: 0.63,
      wave: 0.02,
      waveMm: 6.5,
      bowX: 0.5,
      bowY: -0.9,
      flareProximal: 1.05,
      flareDistal: 0.7,
      grain: 1.7,
    },
    shiftMm: [-0.7, 0.35, 0.7],
    turnDeg: [-10, 7],
    obliquityDeg: [9, -6],
    second: { proximal: [-2.9, -1.6, 0.5], distal: [-2.1, -1.1, 0.42] },
    limb: [11.5, 7, 4.6],
    pitchMm: 0.085,
    heightMm: 14,
    ballMm: 5,
    ballAt: [-17, -9],
    seed: 41,
  },
  {
    key: 'owl',
    bone: {
      ...usual,
      proximalMm: 44,
      distalMm: 40,
      a: 2.85,
      b: 2.6,
      taper: -0.002,
      canalShare: 0.81,
      wave: 0.012,
      waveMm: 11,
      bowX: -0.6,
      bowY: 1.2,
      flareProximal: 0.75,
      flareDistal: 0.62,
      grain: 4.2,
    },
    shiftMm: [1.3, -0.9, 1.5],
    turnDeg: [13, -8],
    obliquityDeg: [28, 14],
    second: { proximal: [-4.4, -1.2, 0.62], distal: [-3.1, -0.6, 0.2] },
    limb: [17, 9, 4.8],
    pitchMm: 0.13,
    heightMm: 22,
    ballMm: 8,
    ballAt: [27, 20],
    seed: 40,
  },
  {
    key: 'hedgehog',
    bone: {
      ...usual,
      proximalMm: 21,
      distalMm: 21.5,
      a: 2.95,
      b: 2.75,
      taper: 0.001,
      canalShare: 0.6,
      wave: 0.02,
      waveMm: 8,
      bowX: 0.3,
      bowY: 0.8,
      flareProximal: 0.95,
      flareDistal: 0.9,
      grain: 7.9,
    },
    shiftMm: [0.9, 0.7, 0.4],
    turnDeg: [8, 11],
    obliquityDeg: [-18, 10],
    second: null,
    limb: [13, 11, 8.5],
    pitchMm: 0.075,
    heightMm: 20,
    ballMm: 5,
    ballAt: [15, -11],
    seed: 36,
  },
  {
    key: 'rabbit',
    bone: {
      ...usual,
      proximalMm: 50,
      distalMm: 47,
      a: 3.3,
      b: 2.95,
      taper: -0.0025,
      canalShare: 0.66,
      wave: 0.02,
      waveMm: 9,
      bowX: 1,
      bowY: -1.6,
      flareProximal: 1.1,
      flareDistal: 0.75,
      grain: 2.6,
    },
    shiftMm: [0.9, -0.8, 0.9],
    turnDeg: [-6, 9],
    obliquityDeg: [12, 8],
    second: { proximal: [-5.6, -2.6, 0.95], distal: [-4.2, -1.6, 0.7] },
    limb: [24, 13, 8],
    pitchMm: 0.15,
    heightMm: 26,
    ballMm: 10,
    ballAt: [-32, 22],
    seed: 29,
  },
];
