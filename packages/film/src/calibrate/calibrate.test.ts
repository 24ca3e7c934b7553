import { describe, expect, test } from 'vitest';
import { type Camera, type FilmKind, project, shadowOf } from '../projector/project.ts';
import { ball, rod, type Solid } from '../projector/solids.ts';
import type { Vector } from '../projector/vector.ts';
import { calibrate } from './calibrate.ts';
import { fitBall } from './fit-ball.ts';

const camera: Camera = { cols: 260, rows: 240, pitchMm: 0.12, sourceToDetectorMm: 1000 };
const film: FilmKind = {
  blurPx: 1,
  tailShare: 0.05,
  hardening: 0.15,
  scatter: 0.03,
  quanta: 6000,
  noiseSpread: 0.08,
  bitsStored: 14,
  photometric: 'MONOCHROME2',
  relationship: 'LOG',
  sign: -1,
};
const STEEL = 2.9;
const AT: Vector = [15, 14, 20];

function filmed(solids: readonly Solid[], kind: Partial<FilmKind> = {}, seed = 1) {
  return project({ camera, solids, film: { ...film, ...kind }, seed });
}

describe('a steel ball beside the bone', () => {
  const near = shadowOf(camera, AT).map((v) => v + 7) as [number, number];
  const truth = (0.12 * (1000 - 20)) / 1000;

  test.each([
    ['LOG', -1],
    ['LOG', 1],
    ['LIN', -1],
    ['LIN', 1],
  ] as const)('%s, sign %d: millimetres per pixel within 0.3 %%', (relationship, sign) => {
    const image = filmed([ball(AT, 2.5, STEEL)], {
      relationship,
      sign,
      photometric: sign === 1 ? 'MONOCHROME1' : 'MONOCHROME2',
    });
    const scale = calibrate(image, { kind: 'ball', diameterMm: 5, near });
    // 0.3 % is 0.06 of a pixel at each rim of 42 pixels; what is asked for is 0.7 %
    expect(Math.abs(scale.mmPerPixel.value! / truth - 1)).toBeLessThan(0.003);
    expect(scale.mmPerPixel.sd!).toBeGreaterThan(0);
    expect(scale.ball!.longAxisPx / scale.ball!.shortAxisPx).toBeLessThan(1.01);
  });

  test('10 mm nearer the source than the bone reads lengths 1.02 % short, and with the heights given does not', () => {
    const high: Vector = [AT[0], AT[1], 30];
    const image = filmed([ball(high, 2.5, STEEL)], { relationship: 'LIN' });
    const at = shadowOf(camera, high);
    const plain = calibrate(image, { kind: 'ball', diameterMm: 5, near: at });
    const told = calibrate(image, {
      kind: 'ball',
      diameterMm: 5,
      near: at,
      sourceToDetectorMm: 1000,
      ballToDetectorMm: 30,
      objectToDetectorMm: 20,
    });
    expect(100 * (plain.mmPerPixel.value! / truth - 1)).toBeCloseTo(-1.02, 0);
    expect(Math.abs(told.mmPerPixel.value! / truth - 1)).toBeLessThan(0.003);
    // what 5 mm of height do at a metre, less the 20 mm of the bone
    expect(told.ballHeightErrorPercent).toBeCloseTo(500 / 980, 6);
  });

  test("cut by the film's edge: no scale, and why", () => {
    const image = filmed([ball([1.5, 14, 20], 2.5, STEEL)]);
    const scale = calibrate(image, { kind: 'ball', diameterMm: 5, near: [6, 117] });
    expect(scale.mmPerPixel.value).toBeNull();
    expect(scale.mmPerPixel.why).toMatch(/cut/);
  });

  test('with a rod across its rim: refused, not measured', () => {
    const across = rod([8, 14.5, 20], [24, 14.5, 20], 1.6, STEEL);
    const found = fitBall(filmed([ball(AT, 2.5, STEEL), across]), near, 5);
    expect('why' in found && found.why).toMatch(/gap|whole|stretched/);
  });

  test('where there is none: refused', () => {
    const found = fitBall(filmed([]), [120, 100], 5);
    expect('why' in found).toBe(true);
  });
});

test('geometry: pitch times (SID - height) / SID', () => {
  const scale = calibrate(filmed([]), {
    kind: 'geometry',
    sourceToDetectorMm: 1050,
    objectToDetectorMm: 42,
    detectorPitchMm: 0.12,
  });
  expect(scale.mmPerPixel.value).toBeCloseTo(0.1152, 10);
  expect(scale.ball).toBeNull();
});

test('a scale is taken as given, with its own sd', () => {
  const scale = calibrate(filmed([]), { kind: 'scale', mmPerPixel: 0.05, sdPercent: 0.4 });
  expect(scale.mmPerPixel).toEqual({ value: 0.05, sd: 0.0002 });
});
