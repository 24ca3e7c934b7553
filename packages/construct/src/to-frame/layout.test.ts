import { describe, expect, test } from 'vitest';
import { nominalFigures } from '../model/figures.ts';
import { type PinAt, type StraightBone, straightBone } from '../straight-bone.ts';
import { alongPin, layOut, tissueAt } from './layout.ts';

const BONE: StraightBone = {
  lengthMm: 60,
  outerMm: 6,
  canalMm: 4,
  gapMm: 2,
  pinMm: 1.2,
  pins: [[10], [24], [36], [50]],
  columnMm: 6,
  clearanceMm: 5,
  columnYoungMPa: 2500,
};
const laidOut = (change: Partial<StraightBone>) => {
  const patientCase = straightBone({ ...BONE, ...change });
  const construct = patientCase.construct!;
  return layOut(patientCase, construct, nominalFigures(patientCase, construct));
};

test('square pins: walls at 3 mm, column from 8 to 14 mm over the axis, its axis at 11', () => {
  const pin = laidOut({}).pins[1]!;
  expect(pin.nearOuterMm).toBeCloseTo(3, 9);
  expect(pin.nearMiddleMm).toBeCloseTo(2.5, 9);
  expect(pin.farOuterMm).toBeCloseTo(-3, 9);
  expect(pin.entries[0]).toMatchObject({ surfaceMm: expect.closeTo(8, 9), embeddedMm: expect.closeTo(6, 9) });
  expect(pin.entries[0]!.axis).toEqual([24, expect.closeTo(11, 9), expect.closeTo(0, 9)]);
});

test('held 0.31 d (E pin / E column)^(1/3) past the surface: 1.585 mm for 1.2 mm in 2500 MPa', () => {
  const { surfaceMm, heldMm } = laidOut({}).pins[0]!.entries[0]!;
  expect(heldMm - surfaceMm).toBeCloseTo(0.31 * 1.2 * Math.cbrt(193_000 / 2500), 9);
});

describe('a pin leaning 20 degrees distally', () => {
  const pins: PinAt[] = [[10, 20], [24], [36], [50]];
  const pin = laidOut({ pins }).pins[0]!;
  test('crosses the axis at its sMm and meets the near wall R tan(20) further on', () => {
    expect(alongPin(pin, 0)).toEqual([10, 0, 0]);
    expect(alongPin(pin, pin.nearOuterMm)[0]).toBeCloseTo(10 + 3 * Math.tan(Math.PI / 9), 9);
  });
  test('its free length is that of the square pin over cos(20)', () => {
    expect(pin.entries[0]!.surfaceMm - pin.nearOuterMm).toBeCloseTo(5 / Math.cos(Math.PI / 9), 9);
  });
});

describe('pins from two directions', () => {
  const about = (deg: number): PinAt[] => [10, 24, 36, 50].map((s, i) => [s, 0, i % 2 ? deg : -deg]);
  test('little apart: one straight column in the middle plane, every pin inside it', () => {
    const { pins } = laidOut({ pins: about(8) });
    for (const { entries } of pins) expect(entries[0]!.axis[2]).toBeCloseTo(0, 9);
    expect(pins[0]!.entries[0]!.embeddedMm).toBeLessThan(6);
  });
  test('far apart: the column runs from pin to pin', () => {
    const { pins } = laidOut({ pins: about(30) });
    expect(pins[0]!.entries[0]!.axis[2]).toBeCloseTo(-11 * Math.sin(Math.PI / 6), 9);
    expect(pins[1]!.entries[0]!.axis[2]).toBeCloseTo(11 * Math.sin(Math.PI / 6), 9);
  });
});

test('two columns: each pin runs through to the far one, as far off as the near one', () => {
  const [near, far] = laidOut({ twoColumns: true }).pins[0]!.entries;
  expect(far!.surfaceMm).toBeCloseTo(-near!.surfaceMm, 9);
  expect(far!.axis[1]).toBeCloseTo(-11, 9);
});

test('a tied-in IM pin draws the column out past the bone’s end', () => {
  const { columns, imBend } = laidOut({ im: { diameterMm: 2, tiedIn: true } });
  expect(columns[0]!.fromMm).toBeCloseTo(-6 - 3, 9);
  expect(imBend!.crossing).toEqual([-6, 0, 0]);
  expect(imBend!.surfaceMm).toBeCloseTo(8, 9);
});

test('soft tissue: linear between the depths given, held at the ends, 0 where none', () => {
  const patientCase = straightBone(BONE);
  const softTissueMm = [
    { sMm: 10, depthMm: 6 },
    { sMm: 50, depthMm: 2 },
  ];
  expect([0, 10, 30, 60].map((s) => tissueAt({ ...patientCase, softTissueMm }, s))).toEqual([6, 6, 4, 2]);
  expect(tissueAt(patientCase, 30)).toBe(0);
  const steep = [
    { sMm: 0, depthMm: 5 },
    { sMm: 10, depthMm: 1 },
  ];
  expect(tissueAt({ ...patientCase, softTissueMm: steep }, 5)).toBe(3);
});

test('a pin in the open gap holds no fragment', () => {
  expect(laidOut({ pins: [[10], [30], [36], [50]] }).pins[1]!.fragment).toBeNull();
});
