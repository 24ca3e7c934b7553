import { expect, test } from 'vitest';
import { canalLine, clearanceAt, fitted, isthmus, profileOf } from './index.ts';

/** Canal 3 mm wide, bowed as an arc of 400 mm radius: sagitta over 40 mm is 40^2 / (8 * 400) = 0.5 mm. */
const bowed = profileOf(
  40,
  Array.from({ length: 41 }, (_, s) => ({
    sMm: s,
    outerMm: [5, 5] as const,
    canalMm: [3 - (s === 25 ? 0.4 : 0), 3] as const,
    offsetMm: [(s * (40 - s)) / 800, 0] as const,
    sdMm: 0.05,
  })),
  'mammal',
);

test('a straight pin in an arc lies between end and middle: a third and two thirds of the sagitta off', () => {
  const line = canalLine(bowed, 0, 40);
  // The least-squares line of a parabola of height h lies at 2h/3; 0.005 mm is what 24 looks instead of all do.
  expect(line.at(20)[0]).toBeCloseTo(0.5 * (2 / 3), 2);
  expect(line.bowMm(20)).toBeCloseTo(0.5 / 3, 2);
  expect(line.bowMm(0)).toBeCloseTo((0.5 * 2) / 3, 1);
});

test('room beside the pin: half the difference of widths less the bow, never below nothing', () => {
  const line = canalLine(bowed, 0, 40);
  expect(clearanceAt(bowed, line, 1.6, 20)).toBeCloseTo((3 - 1.6) / 2 - line.bowMm(20), 12);
  expect(clearanceAt(bowed, line, 3.2, 20)).toBe(0);
});

test('the isthmus is where the narrower view is narrowest', () => {
  expect(isthmus(bowed, 5, 35)).toEqual({ sMm: 25, canalMm: 2.6 });
});

test('points on a straight line are fitted exactly; one point gives a level line', () => {
  expect(fitted([1, 2, 4], [3, 5, 9])(10)).toBeCloseTo(21, 12);
  expect(fitted([7], [3])(100)).toBe(3);
});
