import { entry } from '@bonewright/evidence';
import { expect, test } from 'vitest';
import { factorOf } from './spread.ts';

test('a plain range is read as 95 %: its ends lie 1.96 standard deviations off, as a ratio', () => {
  const { low, high } = entry('column.epoxy-putty.young');
  const ratio = factorOf('column.epoxy-putty.young', 1.96) / factorOf('column.epoxy-putty.young', -1.96);
  expect(ratio).toBeCloseTo(high / low, 9);
  expect(factorOf('column.epoxy-putty.young', 0)).toBe(1);
});
