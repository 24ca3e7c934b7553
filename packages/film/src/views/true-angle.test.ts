import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trueAngle } from './true-angle.ts';

const RADIANS = Math.PI / 180;

describe('true angulation of square views, atan(sqrt(tan2 a + tan2 b)) as in Orthopedic Reviews', () => {
  // worked with that formula by hand; 0.005 deg is half of the last digit
  test.each([
    [19, 14, 23.03, 35.91],
    [15, 20, 24.32, 53.64],
    [10, 10, 14.0, 45.0],
    [5, 25, 25.38, 79.4],
    [30, 30, 39.23, 45.0],
  ])('%d and %d degrees are %d', (a, b, angle, plane) => {
    const found = trueAngle([a, b], 90);
    expect(Math.abs(found.trueAngulationDeg - angle)).toBeLessThan(0.0051);
    expect(Math.abs(found.planeFromFirstViewDeg - plane)).toBeLessThan(0.051);
  });

  test('19 and 14 degrees agree with the 24 of the drawing rule (PMC4799231 fig. 5) within its rounding', () => {
    // the rule adds the angles as sides of a rectangle: hypot 23.6, printed 24; the exact value is 23.0
    expect(Math.abs(trueAngle([19, 14], 90).trueAngulationDeg - Math.hypot(19, 14))).toBeLessThan(0.6);
  });
});

test('views that are not square: a known bend seen from any two directions comes back', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 60, noNaN: true }),
      fc.double({ min: -179, max: 179, noNaN: true }),
      fc.double({ min: 20, max: 160, noNaN: true }),
      (bend, plane, between) => {
        const seen = (view: number) =>
          Math.atan(Math.tan(bend * RADIANS) * Math.cos((plane - view) * RADIANS)) / RADIANS;
        const found = trueAngle([seen(0), seen(between)], between);
        // closed form both ways: only rounding, magnified by 1 / sin(20 deg)
        expect(found.trueAngulationDeg).toBeCloseTo(bend, 8);
        expect(Math.cos((found.planeFromFirstViewDeg - plane) * RADIANS)).toBeCloseTo(1, 8);
      },
    ),
  );
});

test('views that show the same plane twice are refused, naming the key', () => {
  expect(() => trueAngle([10, 10], 180)).toThrow(InputError);
  expect(() => trueAngle([10, 95], 90)).toThrow(/95/);
});
