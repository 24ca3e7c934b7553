import { expect, test } from 'vitest';
import type { GreyImage } from '../model/film.ts';
import type { Pixel } from '../model/trace.ts';
import { type Corners, projection, squaredSize, squareUp } from './square-up.ts';

/** A picture whose value at [x, y] is 10 x + y: sampling between pixels is exact on it. */
const slope = (rows: number, cols: number): GreyImage => ({
  ...{ rows, cols, photometric: 'MONOCHROME2' },
  pixels: Float32Array.from({ length: rows * cols }, (_, i) => 10 * (i % cols) + Math.floor(i / cols)),
});
const skew: Corners = [
  [12, 8],
  [88, 20],
  [80, 70],
  [5, 55],
];

test('a film that lies square is given back pixel for pixel', () => {
  const image = slope(7, 9);
  const whole: Corners = [
    [0, 0],
    [8, 0],
    [8, 6],
    [0, 6],
  ];
  expect(squaredSize(whole)).toEqual({ rows: 7, cols: 9 });
  expect(squareUp(image, whole, { rows: 7, cols: 9 }).pixels).toEqual(image.pixels);
});

test('each corner of the film comes to a corner of the picture', () => {
  const { pixels } = squareUp(slope(80, 100), skew, { rows: 51, cols: 76 });
  const values = [0, 75, 51 * 76 - 1, 50 * 76].map((i) => pixels[i]);
  // 32-bit values: 1e-4 of about 900.
  for (const [i, [x, y]] of skew.entries()) expect(values[i]).toBeCloseTo(10 * x + y, 4);
});

test('the middle of the film is where its diagonals cross, as for any projective map', () => {
  const [a, b, c, d] = skew;
  const t = cross(sub(b, a), sub(d, b)) / cross(sub(c, a), sub(d, b));
  const middle: Pixel = [a[0] + t * (c[0] - a[0]), a[1] + t * (c[1] - a[1])];
  const [x, y] = projection(skew)(0.5, 0.5);
  expect(x).toBeCloseTo(middle[0], 9);
  expect(y).toBeCloseTo(middle[1], 9);
});

test('lines stay lines', () => {
  const at = projection(skew);
  const [p, q, r] = [at(0.1, 0.9), at(0.3, 0.5), at(0.5, 0.1)];
  expect(cross(sub(q, p), sub(r, p))).toBeCloseTo(0, 9);
});

test('corners in the wrong order, or outside the picture, are refused', () => {
  const [a, b, c, d] = skew;
  const size = { rows: 10, cols: 10 };
  expect(() => squareUp(slope(80, 100), [a, c, b, d], size)).toThrow('do not go round');
  expect(() => squareUp(slope(80, 100), [d, c, b, a], size)).toThrow('do not go round');
  expect(() => squareUp(slope(60, 100), skew, size)).toThrow('outside the picture');
  expect(() => squareUp(slope(80, 100), skew, { rows: 1, cols: 10 })).toThrow('has no corners');
});

const sub = (p: Pixel, q: Pixel): Pixel => [p[0] - q[0], p[1] - q[1]];
const cross = (p: Pixel, q: Pixel): number => p[0] * q[1] - p[1] * q[0];
