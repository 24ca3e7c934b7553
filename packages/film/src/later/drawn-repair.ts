/** A film of a repaired bone whose pins lie where we put them. For tests. */
import { value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import { fragment, type LongBone, shaft } from '../projector/long-bone.ts';
import { type Camera, type FilmKind, project } from '../projector/project.ts';
import { rod, type Solid } from '../projector/solids.ts';
import { frameAlong, type Vector } from '../projector/vector.ts';

export const CAMERA: Camera = { cols: 340, rows: 420, pitchMm: 0.1, sourceToDetectorMm: 1000 };
const HEIGHT = 20;
export const MAGNIFIED = 1000 / (1000 - HEIGHT);
export const FILM: FilmKind = {
  blurPx: 1.1,
  tailShare: 0.05,
  hardening: 0.15,
  scatter: 0.03,
  quanta: 4000,
  noiseSpread: 0.1,
  bitsStored: 14,
  photometric: 'MONOCHROME2',
  relationship: 'LIN',
  sign: -1,
};
export const REPAIRED: LongBone = {
  proximalMm: 20,
  distalMm: 20,
  a: 2,
  b: 1.9,
  turn: 0.2,
  taper: 0.002,
  canalShare: 0.65,
  wave: 0.02,
  waveMm: 6,
  offA: 0.03,
  offB: 0,
  bowX: 0.3,
  bowY: 0,
  attenuation: 0.1,
  flareProximal: 0.7,
  flareDistal: 0.5,
  grain: 3,
};
const AT: Vector = [17, 21, HEIGHT];

export interface Pin {
  readonly near: Vector;
  readonly tip: Vector;
  readonly diameterMm: number;
}

/** Points of the limb's plane, mm from the fracture: across, along. */
export const place = (across: number, along: number): Vector => [AT[0] + across, AT[1] + along, HEIGHT];
export const PINS: readonly Pin[] = [
  { near: place(12, -14), tip: place(-3.1, -13), diameterMm: 0.9 },
  { near: place(12, -7.5), tip: place(-2.9, -6.2), diameterMm: 0.9 },
  { near: place(12, 8), tip: place(-3.3, 7.4), diameterMm: 1.1 },
];
export const IM: Pin = { near: place(-0.5, -20.5), tip: place(0.6, 15), diameterMm: 1.2 };

export function filmOf(pins: readonly Pin[], film: FilmKind = FILM): GreyImage {
  const frame = frameAlong(AT, [0, 1, 0], [1, 0, 0]);
  const face = { at: 0, slopeX: 0.2, slopeY: 0, jag: () => 0 };
  const flesh = shaft(
    frame,
    [-24, 24],
    () => ({ cx: 0, cy: 0, a: 7, b: 6 }),
    value('imaging.soft-tissue.attenuation'),
    0,
    true,
  );
  const solids: Solid[] = [
    fragment(REPAIRED, frame, 'proximal', face),
    fragment(REPAIRED, frame, 'distal', face),
    flesh,
    ...pins.map((p) => rod(p.near, p.tip, p.diameterMm, value('imaging.steel.attenuation'))),
  ];
  return project({ camera: CAMERA, solids, film, seed: 5 });
}
