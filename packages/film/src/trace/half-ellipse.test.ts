import { expect, test } from 'vitest';
import { blurredHalfEllipse, shadowAt } from './half-ellipse.ts';

/** The blurred shadow by brute force: substitution x = a sin t takes out the steep edge. */
function byQuadrature(x: number, a: number, sigma: number): number {
  const n = 8000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const t = -Math.PI / 2 + ((i + 0.5) * Math.PI) / n;
    sum += Math.cos(t) ** 2 * Math.exp(-((x - a * Math.sin(t)) ** 2) / (2 * sigma * sigma));
  }
  return (sum * a * Math.PI) / n / (sigma * Math.sqrt(2 * Math.PI));
}

const CASES = [
  [14, 1.05],
  [7, 1.3],
  [5, 2],
  [30, 3.5],
  [2.5, 0.8],
] as const;

test.each(CASES)('half-width %d, blur %d: value against brute-force integration', (a, sigma) => {
  const table = blurredHalfEllipse(a, sigma);
  const out = new Float64Array(4);
  for (let x = -a - 4 * sigma; x <= a + 4 * sigma; x += 0.37) {
    shadowAt(table, x, out);
    // 1e-3 of the height is far below the noise of any film
    expect(Math.abs(out[0]! - byQuadrature(x, a, sigma))).toBeLessThan(1e-3);
  }
});

test.each(CASES)('half-width %d, blur %d: slopes by x, a and blur against differences of the integral', (a, sigma) => {
  const table = blurredHalfEllipse(a, sigma);
  const out = new Float64Array(4);
  const h = 1e-3;
  for (let x = -a - 3 * sigma; x <= a + 3 * sigma; x += 0.71) {
    shadowAt(table, x, out);
    const byX = (byQuadrature(x + h, a, sigma) - byQuadrature(x - h, a, sigma)) / (2 * h);
    const byA = (byQuadrature(x, a + h, sigma) - byQuadrature(x, a - h, sigma)) / (2 * h);
    const bySigma = (byQuadrature(x, a, sigma + h) - byQuadrature(x, a, sigma - h)) / (2 * h);
    // the table's linear second derivative costs up to 0.01 where the edge is sharpest
    expect(Math.abs(out[1]! - byX)).toBeLessThan(0.01);
    expect(Math.abs(out[2]! - byA)).toBeLessThan(0.01);
    expect(Math.abs(out[3]! - bySigma)).toBeLessThan(0.01);
  }
});
