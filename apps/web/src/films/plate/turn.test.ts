import { expect, test } from 'vitest';
import { flipped, quarterOn, STRAIGHT, type Turn, toFilm, toScreen } from './turn.ts';

const all = ([false, true] as const).flatMap((isFlipped) =>
  ([0, 1, 2, 3] as const).map((quarters): Turn => ({ isFlipped, quarters })),
);

test('a quarter on sends what was up to the right, as it is seen', () => {
  for (const turn of all) {
    const before = toFilm(turn, [0, -1]);
    const [x, y] = toScreen(quarterOn(turn), before);
    expect([x + 0, y + 0]).toEqual([1, 0]);
  }
});

test('a flip swaps left and right as they are seen, and twice is none', () => {
  for (const turn of all) {
    const [x, y] = toScreen(flipped(turn), toFilm(turn, [1, 2]));
    expect([x + 0, y + 0]).toEqual([-1, 2]);
    expect(flipped(flipped(turn))).toEqual(turn);
  }
});

test('four quarters are none', () => {
  expect(quarterOn(quarterOn(quarterOn(quarterOn(STRAIGHT))))).toEqual(STRAIGHT);
});
