import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ringProperties, wallAt, widthAcross } from './index.ts';

test('round tube: area, second moments and torsion constant are those of the closed form', () => {
  // Outer 6, bore 4: A = pi/4 (36 - 16), I = pi/64 (1296 - 256), J = 2 I.
  const { areaMm2, iyMm4, izMm4, jMm4 } = ringProperties({ outerMm: [6, 6], canalMm: [4, 4] });
  expect(areaMm2).toBeCloseTo(15.707963, 6);
  expect(iyMm4).toBeCloseTo(51.050881, 6);
  expect(izMm4).toBeCloseTo(51.050881, 6);
  expect(jMm4).toBeCloseTo(102.101761, 6);
});

test('solid ellipse: wider in the medial plane bends less in it', () => {
  // pi/64 a^3 b with a = 6 medially, b = 4 cranially.
  const { iyMm4, izMm4 } = ringProperties({ outerMm: [6, 4], canalMm: [0, 0] });
  expect(izMm4).toBeCloseTo((Math.PI / 64) * 6 ** 3 * 4, 9);
  expect(iyMm4).toBeCloseTo((Math.PI / 64) * 4 ** 3 * 6, 9);
});

test('walls: on the axes the half widths, in between on the ellipse', () => {
  const ring = { outerMm: [6, 4], canalMm: [4, 2] } as const;
  expect(wallAt(ring, 0)).toEqual({ outerRadiusMm: 3, canalRadiusMm: 2, wallMm: 1, midRadiusMm: 2.5 });
  expect(wallAt(ring, 90).outerRadiusMm).toBeCloseTo(2, 12);
  expect(widthAcross(ring, 0)).toBeCloseTo(4, 12);
  fc.assert(
    fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (aboutDeg) => {
      const r = wallAt(ring, aboutDeg).outerRadiusMm;
      const a = (aboutDeg * Math.PI) / 180;
      // A point of the ellipse satisfies (y/3)^2 + (z/2)^2 = 1; 1e-9 is rounding.
      expect(((r * Math.cos(a)) / 3) ** 2 + ((r * Math.sin(a)) / 2) ** 2).toBeCloseTo(1, 9);
    }),
  );
});

test('no canal: the wall is the whole radius', () => {
  expect(wallAt({ outerMm: [5, 5], canalMm: [0, 0] }, 30).wallMm).toBeCloseTo(2.5, 12);
});
