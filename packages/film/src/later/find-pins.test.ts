import { value } from '@bonewright/evidence';
import { describe, expect, test } from 'vitest';
import type { GreyImage } from '../model/film.ts';
import type { Pixel } from '../model/trace.ts';
import { fragment, type LongBone, shaft } from '../projector/long-bone.ts';
import { type Camera, type FilmKind, project, shadowOf } from '../projector/project.ts';
import { rod, type Solid } from '../projector/solids.ts';
import { frameAlong, type Vector } from '../projector/vector.ts';
import { findPins } from './find-pins.ts';
import { type ExpectedRod, type FoundRod, isFound } from './rod.ts';

const CAMERA: Camera = { cols: 340, rows: 420, pitchMm: 0.1, sourceToDetectorMm: 1000 };
const HEIGHT = 20;
const MAGNIFIED = 1000 / (1000 - HEIGHT);
const FILM: FilmKind = {
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
const BONE: LongBone = {
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

interface Pin {
  readonly near: Vector;
  readonly tip: Vector;
  readonly diameterMm: number;
}

/** Points of the limb's plane, mm from the fracture: across, along. */
const place = (across: number, along: number): Vector => [AT[0] + across, AT[1] + along, HEIGHT];
const PINS: readonly Pin[] = [
  { near: place(12, -14), tip: place(-3.1, -13), diameterMm: 0.9 },
  { near: place(12, -7.5), tip: place(-2.9, -6.2), diameterMm: 0.9 },
  { near: place(12, 8), tip: place(-3.3, 7.4), diameterMm: 1.1 },
];
const IM: Pin = { near: place(-0.5, -20.5), tip: place(0.6, 15), diameterMm: 1.2 };

function filmOf(pins: readonly Pin[], film: FilmKind = FILM): GreyImage {
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
    fragment(BONE, frame, 'proximal', face),
    fragment(BONE, frame, 'distal', face),
    flesh,
    ...pins.map((p) => rod(p.near, p.tip, p.diameterMm, value('imaging.steel.attenuation'))),
  ];
  return project({ camera: CAMERA, solids, film, seed: 5 });
}

/** As the plan might have it: moved across and turned from where the pin is, and off at the tip. */
function expectedOf(pin: Pin, i: number, off: { px: number; deg: number; tipPx: number }): ExpectedRod {
  const [a, b] = [shadowOf(CAMERA, pin.near), shadowOf(CAMERA, pin.tip)];
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + (off.deg * Math.PI) / 180;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const middle: Pixel = [(a[0] + b[0]) / 2 - off.px * Math.sin(angle), (a[1] + b[1]) / 2 + off.px * Math.cos(angle)];
  const at = (s: number): Pixel => [middle[0] + s * Math.cos(angle), middle[1] + s * Math.sin(angle)];
  return {
    name: `P${i + 1}`,
    near: at(-length / 2),
    tip: at(length / 2 + off.tipPx),
    widthPx: (pin.diameterMm * MAGNIFIED) / CAMERA.pitchMm,
  };
}

/** Distance of a point from the line through two others, and the angle between two lines. */
function away(p: Pixel, [a, b]: readonly [Pixel, Pixel]): number {
  const d = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / d;
}
const degrees = ([a, b]: readonly [Pixel, Pixel]) => (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;

function check(found: FoundRod, pin: Pin): void {
  const [near, tip] = [shadowOf(CAMERA, pin.near), shadowOf(CAMERA, pin.tip)];
  const middle: Pixel = [(near[0] + tip[0]) / 2, (near[1] + tip[1]) / 2];
  // a quarter pixel is 0.025 mm: far below what any limit asks for
  expect(away(middle, found.line)).toBeLessThan(0.25);
  expect(Math.abs(degrees(found.line) - degrees([near, tip]))).toBeLessThan(0.25);
  const widthPx = (pin.diameterMm * MAGNIFIED) / CAMERA.pitchMm;
  // standard drawer sizes lie 12 % apart: half of that tells them apart
  expect(Math.abs(found.widthPx / widthPx - 1)).toBeLessThan(0.06);
  // a pixel of 0.1 mm: the depth limits are whole pin diameters
  const [tx, ty] = found.tip.place!;
  expect(Math.hypot(tx - tip[0], ty - tip[1])).toBeLessThan(1);
}

const SEARCH = { reachPx: 25, turnDeg: 12 };

describe.each(['LIN', 'LOG'] as const)('pins on a film of %s values', (relationship) => {
  const image = filmOf(PINS, { ...FILM, relationship });
  test('are found from 8 pixels, 5 degrees and a tip 15 pixels off', () => {
    const wanted = PINS.map((p, i) =>
      expectedOf(p, i, { px: i === 1 ? -8 : 8, deg: i === 1 ? 5 : -5, tipPx: i === 0 ? 15 : -15 }),
    );
    for (const [i, found] of findPins(image, wanted, SEARCH).entries()) {
      if (!isFound(found)) throw new Error(`${found.name}: ${found.why}`);
      check(found, PINS[i]!);
    }
  });
});

test('a pin in the canal is found through the pins that cross it, and they through it', () => {
  const all = [...PINS, IM];
  const image = filmOf(all);
  const wanted = all.map((p, i) => expectedOf(p, i, { px: 4, deg: 2, tipPx: -8 }));
  for (const [i, found] of findPins(image, wanted, SEARCH).entries()) {
    if (!isFound(found)) throw new Error(`${found.name}: ${found.why}`);
    check(found, all[i]!);
  }
});

describe('what is not there is not found', () => {
  const image = filmOf(PINS.slice(0, 1));
  const none = { px: 0, deg: 0, tipPx: 0 };
  test('a planned pin that was not placed, and no cortex taken for a pin in the canal', () => {
    const found = findPins(image, [expectedOf(PINS[2]!, 2, none), expectedOf(IM, 3, none)], SEARCH);
    for (const f of found) expect(isFound(f)).toBe(false);
  });
  test('a pin that points at the viewer', () => {
    const [found] = findPins(image, [{ name: 'P1', near: [100, 100], tip: [103, 100], widthPx: 9 }], SEARCH);
    expect(found).toMatchObject({ why: expect.stringContaining('viewer') });
  });
  test('one whose place lies off the film', () => {
    const [found] = findPins(image, [{ name: 'P1', near: [900, 100], tip: [1000, 100], widthPx: 9 }], SEARCH);
    expect(found).toMatchObject({ why: expect.stringContaining('off the film') });
  });
});
