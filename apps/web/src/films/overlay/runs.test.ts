import type { TraceStation } from '@bonewright/film';
import { expect, test } from 'vitest';
import { runsOf } from './runs.ts';

const station = (sMm: number, sd: number | null): TraceStation => ({
  sMm,
  centre: [10, sMm],
  outerMm: { value: sd === null ? null : 4, sd },
  canalMm: { value: null, sd: null },
  walls: {
    outer:
      sd === null
        ? null
        : [
            [8, sMm],
            [12, sMm],
          ],
    canal: null,
  },
});

test('a stretch that was not found breaks the line', () => {
  const runs = runsOf([station(0, 0.1), station(1, 0.1), station(2, null), station(3, 0.1)], 'outer');
  expect(runs.map(({ points }) => points.length)).toEqual([2, 1]);
});

test('a less sure stretch is a run of its own that touches its neighbours', () => {
  const runs = runsOf([station(0, 0.1), station(1, 0.1), station(2, 0.5), station(3, 0.1)], 'outer');
  expect(runs.map(({ isSure }) => isSure)).toEqual([true, false, true]);
  expect(runs[1]?.points[0]).toEqual(runs[0]?.points.at(-1));
});

test('a wall that was nowhere found has no run', () => {
  expect(runsOf([station(0, 0.1)], 'canal')).toEqual([]);
});
