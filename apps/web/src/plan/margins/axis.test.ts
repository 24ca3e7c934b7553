import { expect, test } from 'vitest';
import { isOffAxis, onAxis } from './axis.ts';

test('equal ratios take equal lengths, so that bars compare', () => {
  expect(onAxis(2) - onAxis(1)).toBeCloseTo(onAxis(4) - onAxis(2), 9);
});

test('a margin past the ends is held there and said to be off the axis', () => {
  expect([onAxis(0), onAxis(0.5), onAxis(6), onAxis(40)]).toEqual([0, 0, 100, 100]);
  expect([0.4, 0.5, 6, 6.1].map(isOffAxis)).toEqual([true, false, false, true]);
});
