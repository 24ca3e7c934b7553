import { expect, test } from 'vitest';
import { onAxis } from './axis.ts';
import { binsOf } from './bins.ts';

const sum = (counts: readonly number[]) => counts.reduce((a, b) => a + b, 0);

test('every trial is counted once, those off the axis too', () => {
  const bins = binsOf([0.01, 0.5, 0.99, 1, 1.2, 1.5, 3, 6, 40]);
  expect(sum(bins.map(({ count }) => count))).toBe(9);
});

test('no bar stands on both sides of the line where it fails', () => {
  const bins = binsOf([0.7, 0.9999, 1, 1.0001]);
  const left = bins.filter(({ to }) => to <= onAxis(1) + 1e-9);
  expect(sum(left.map(({ count }) => count))).toBe(2);
  expect(bins.every(({ from, to }) => to <= onAxis(1) + 1e-9 || from >= onAxis(1) - 1e-9)).toBe(true);
});
