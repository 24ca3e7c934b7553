import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measured, Pixel } from '../model/trace.ts';
import { seededRandom } from '../projector/random.ts';
import { angleByHand, angleOfLines, diameterByHand, type HandMeasured, lengthByHand } from './by-hand.ts';

const SCALE: Measured = { value: 0.14, sd: 0 };
const NO_SCALE: Measured = { value: null, sd: null, why: 'no ball was found' };

describe('a length', () => {
  test('3-4-5 triangle: 50 pixels of 0.14 mm are 7 mm, sd p / sqrt(6) = 0.057 mm', () => {
    const found = lengthByHand([10, 10], [40, 50], SCALE);
    expect(found.value).toBeCloseTo(7, 12);
    // p / sqrt(6) of a 0.14 mm pixel, rounded to three places
    expect(Math.abs(found.sd! - 0.057)).toBeLessThan(0.0005);
    expect(found.unit).toBe('mm');
  });
  test('the sd of the scale grows with the length', () => {
    const found = lengthByHand([0, 0], [1000, 0], { value: 0.1, sd: 0.001 });
    // 1 % of 100 mm; the clicks add 0.04 mm in quadrature: below 0.001
    expect(Math.abs(found.sd! - 1)).toBeLessThan(0.001);
  });
  test('without a scale it stays in pixels and says why', () => {
    expect(lengthByHand([0, 0], [3, 4], NO_SCALE)).toMatchObject({ value: 5, unit: 'px', noScale: NO_SCALE.why });
  });
  test('two points in one place are no length', () => {
    expect(lengthByHand([3, 4], [3, 4], SCALE).why).toBe('both points are the same');
  });
});

describe('an angle', () => {
  test.each<[Pixel, Pixel, Pixel, number]>([
    [[100, 0], [0, 0], [0, 100], 90],
    [[100, 0], [0, 0], [-100, 0], 180],
    [[100, 0], [0, 0], [50, 50 * Math.sqrt(3)], 60],
  ])('at a vertex %j %j %j is %d degrees', (a, vertex, b, deg) => {
    expect(angleByHand(a, vertex, b).value).toBeCloseTo(deg, 10);
  });
  test('of two lines: 19 degrees, signed, whichever way they are turned together', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), (turn) => {
        const line = (deg: number): [Pixel, Pixel] => {
          const a = turn + (deg * Math.PI) / 180;
          return [
            [7, 9],
            [7 + 80 * Math.cos(a), 9 + 80 * Math.sin(a)],
          ];
        };
        expect(angleOfLines(line(0), line(19)).value).toBeCloseTo(19, 8);
        expect(angleOfLines(line(19), line(0)).value).toBeCloseTo(-19, 8);
      }),
    );
  });
  test('a leg of two pixels is none', () => {
    expect(angleByHand([2, 0], [0, 0], [0, 50])).toMatchObject({ value: null, sd: null });
  });
});

describe('a diameter', () => {
  test('is read square to the axis, not along the line between the two edges', () => {
    const found = diameterByHand(
      [
        [0, 0],
        [0, 100],
      ],
      [
        [-10, 40],
        [10, 48],
      ],
      NO_SCALE,
    );
    expect(found.value).toBe(20);
  });
  test('edges that lie along the axis are refused in words', () => {
    const along = diameterByHand(
      [
        [0, 0],
        [0, 100],
      ],
      [
        [0, 0],
        [3, 50],
      ],
      SCALE,
    );
    expect(along.why).toMatch(/across/);
  });
});

test('the sd is what clicks uniform within a pixel do', () => {
  const random = seededRandom(4);
  const shaken = ([c, r]: Pixel): Pixel => [c + random.between(-0.5, 0.5), r + random.between(-0.5, 0.5)];
  const p: readonly Pixel[] = [
    [20, 30],
    [60, 90],
    [110, 60],
    [25, 160],
  ];
  const kinds: ((q: readonly Pixel[]) => HandMeasured)[] = [
    (q) => lengthByHand(q[0]!, q[1]!, SCALE),
    (q) => angleByHand(q[0]!, q[1]!, q[2]!),
    (q) => angleOfLines([q[0]!, q[1]!], [q[2]!, q[3]!]),
    (q) => diameterByHand([q[0]!, q[3]!], [q[1]!, q[2]!], SCALE),
  ];
  for (const measure of kinds) {
    const exact = measure(p);
    const n = 3000;
    const misses = Array.from({ length: n }, () => measure(p.map(shaken)).value! - exact.value!);
    const spread = Math.sqrt(misses.reduce((s, m) => s + m * m, 0) / n);
    // sd of an sd over 3000 draws is 1.3 %; first-order propagation adds less: 5 %
    expect(Math.abs(exact.sd! / spread - 1)).toBeLessThan(0.05);
  }
});
