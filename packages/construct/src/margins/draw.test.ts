import { expect, test } from 'vitest';
import { normalAt, uniformAt } from './draw.ts';

const COUNT = 20_000;
const draws = Array.from({ length: COUNT }, (_, i) => normalAt(7, i, 3));
const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;

test('normal numbers: middle, spread, tails as the normal distribution has them', () => {
  // Four standard errors of 20 000 draws: 4 / sqrt(20 000) = 0.028 for the mean, 0.02 for the spread.
  expect(Math.abs(mean(draws))).toBeLessThan(0.028);
  expect(Math.abs(Math.sqrt(mean(draws.map((z) => z * z))) - 1)).toBeLessThan(0.02);
  const outside = draws.filter((z) => Math.abs(z) > 1.959964).length / COUNT;
  // 5 % lie outside; four standard errors are 0.62 %.
  expect(Math.abs(outside - 0.05)).toBeLessThan(0.0062);
});

test('neighbouring inputs, samples and seeds are not correlated', () => {
  const pairs = [
    draws.map((z, i) => z * normalAt(7, i, 4)),
    draws.map((z, i) => z * normalAt(7, i + 1, 3)),
    draws.map((z, i) => z * normalAt(8, i, 3)),
  ];
  for (const products of pairs) expect(Math.abs(mean(products))).toBeLessThan(0.028);
});

test('a draw depends on its coordinates only, and never reaches 0 or 1', () => {
  expect(uniformAt(1, 2, 3)).toBe(uniformAt(1, 2, 3));
  expect(uniformAt(1, 2, 3)).not.toBe(uniformAt(1, 3, 2));
  for (let i = 0; i < 1000; i += 1) {
    const u = uniformAt(0, i, 0);
    expect(u > 0 && u < 1).toBe(true);
  }
});
