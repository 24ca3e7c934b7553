import type { Trace, TraceStation } from '@bonewright/film';
import { expect, test } from 'vitest';
import { nearestPlace, placesOf, withEdge, withNothingAt, withoutStation } from './corrections.ts';

const at = { segment: 'distal', sMm: 3.5 };
const other = { segment: 'distal', sMm: 4 };

test('an edge moved twice stands once, where it was put last', () => {
  const once = withEdge([], at, 'outer-left', [10, 20]);
  const both = withEdge(once, at, 'outer-right', [30, 20]);
  expect(withEdge(both, at, 'outer-left', [11, 20])).toEqual([
    { ...at, side: 'outer-right', place: [30, 20] },
    { ...at, side: 'outer-left', place: [11, 20] },
  ]);
});

test('a station left out has no edges; an edge put there makes it count again; undone is as traced', () => {
  const start = withEdge([], other, 'canal-left', [1, 1]);
  const out = withoutStation(withEdge(start, at, 'outer-left', [10, 20]), at);
  expect(out).toEqual([...start, { ...at, exclude: true }]);
  expect(withEdge(out, at, 'outer-left', [9, 20])).toEqual([...start, { ...at, side: 'outer-left', place: [9, 20] }]);
  expect(withNothingAt(out, at)).toEqual(start);
});

const station = (sMm: number): TraceStation => ({
  sMm,
  centre: [100, 10 * sMm],
  outerMm: { value: 4, sd: 0.1 },
  canalMm: { value: null, sd: null },
  walls: { outer: null, canal: null },
});
const none = { value: null, sd: null };
const trace: Trace = {
  mmPerPixel: { value: 0.1, sd: 0.001 },
  ball: null,
  ballHeightErrorPercent: null,
  segments: [
    { name: 'proximal', axis: { from: [100, 0], to: [100, 20] }, stations: [0, 1, 2].map(station), notes: [] },
    { name: 'distal', axis: { from: [100, 35], to: [100, 40] }, stations: [3.5, 4].map(station), notes: [] },
  ],
  angulationDeg: none,
  translationMm: none,
};

test('a click picks the station beside it, in whichever fragment it lies', () => {
  expect(nearestPlace(trace, [140, 38.5])).toEqual({ segment: 'distal', sMm: 4 });
  expect(nearestPlace(trace, [90, 12])).toEqual({ segment: 'proximal', sMm: 1 });
  expect(placesOf(trace)).toHaveLength(5);
});
