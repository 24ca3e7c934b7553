import { expect, test } from 'vitest';
import { testCase, testConstruct } from '../../plan/test-case.ts';
import { place } from './placement.ts';
import { projectFrom, spacePieces } from './space-pieces.ts';

test('turning the eye keeps lengths: the projection and its depth are one rotation', () => {
  const point = [3, 4, 12] as const;
  for (const eye of [
    { turnDeg: 0, leanDeg: 0 },
    { turnDeg: 37, leanDeg: -21 },
    { turnDeg: 210, leanDeg: 60 },
  ])
    expect(Math.hypot(...projectFrom(eye)(point))).toBeCloseTo(13, 12);
});

test('what lies nearer is painted later', () => {
  const pieces = spacePieces(testCase, place(testCase, testConstruct), { turnDeg: 90, leanDeg: 0 });
  const last = (of: string) => pieces.findLastIndex((piece) => piece.of === of);
  // Looked at from medial the column, which stands medially, covers the bone; from lateral the bone covers the column.
  expect(last('column')).toBeGreaterThan(last('bone'));
  const behind = spacePieces(testCase, place(testCase, testConstruct), { turnDeg: 270, leanDeg: 0 });
  const lastBehind = (of: string) => behind.findLastIndex((piece) => piece.of === of);
  expect(lastBehind('bone')).toBeGreaterThan(lastBehind('column'));
});
