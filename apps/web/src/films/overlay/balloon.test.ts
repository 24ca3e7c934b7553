import { expect, test } from 'vitest';
import { balloonFrom } from './balloon.ts';

test('a balloon stands at the right of its mark', () => {
  expect(balloonFrom([100, 100], [[300, 300]])).toEqual([26, 0]);
});

test('it makes way for a mark, or another balloon, that is there already', () => {
  const others = [
    [128, 100],
    [126, 118],
  ] as const;
  const [dx, dy] = balloonFrom([100, 100], others);
  for (const [x, y] of others) expect(Math.hypot(100 + dx - x, 100 + dy - y)).toBeGreaterThanOrEqual(22);
});

test('crowded in on all sides it stays where it is looked for', () => {
  const crowd = [
    [126, 100],
    [126, 120],
    [126, 80],
    [148, 100],
    [74, 100],
    [52, 100],
  ] as const;
  expect(balloonFrom([100, 100], crowd)).toEqual([26, 0]);
});
