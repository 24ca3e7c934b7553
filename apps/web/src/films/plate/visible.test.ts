import { expect, test } from 'vitest';
import type { Turn } from './turn.ts';
import { filmPlace } from './viewport.ts';
import { onFilmItself, visiblePart } from './visible.ts';

const film = { cols: 3000, rows: 4000 };
const plate = { width: 440, height: 620 };
const CENTRES = [
  [0, 0],
  [1499.5, 1999.5],
  [2990, 17],
] as const;
const turns = ([false, true] as const).flatMap((isFlipped) =>
  ([0, 1, 2, 3] as const).map((quarters): Turn => ({ isFlipped, quarters })),
);

test('every film pixel on the plate is in the part, and it is as fine as the screen', () => {
  for (const centre of CENTRES)
    for (const turn of turns)
      for (const scale of [0.07, 0.147, 0.5, 1, 7, 40]) {
        const view = { centre, scale, turn };
        const part = visiblePart(view, plate, film, 1);
        const { left, top, right, bottom } = onFilmItself(part);
        for (const x of [0, 0.3, 1])
          for (const y of [0, 0.7, 1]) {
            const [col, row] = filmPlace(view, plate, [x * plate.width, y * plate.height]);
            const isOnFilm = col >= -0.5 && col <= film.cols - 0.5 && row >= -0.5 && row <= film.rows - 0.5;
            const isInside = col >= left - 0.5 && col <= right - 0.5 && row >= top - 0.5 && row <= bottom - 0.5;
            expect(!isOnFilm || isInside).toBe(true);
          }
        expect(2 ** part.level * scale).toBeLessThanOrEqual(Math.max(1, scale));
      }
});

test('a whole film of 12 million pixels is drawn from fewer than a million', () => {
  const whole = { centre: [1499.5, 1999.5], scale: 440 / 3000, turn: { isFlipped: false, quarters: 0 } } as const;
  const { level, region } = visiblePart(whole, plate, film, 1);
  expect(level).toBe(2);
  expect((region.right - region.left) * (region.bottom - region.top)).toBeLessThan(1e6);
});
