import { expect, test } from 'vitest';
import { testCase, testConstruct } from '../../../plan/test-case.ts';
import { place } from '../placement.ts';
import { projectFrom } from './eye.ts';
import { spacePieces } from './pieces.ts';

const placement = place(testCase, testConstruct);
const plain = { inside: false, skin: false };

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
  const lastFrom = (turnDeg: number, of: string) =>
    spacePieces(testCase, placement, { turnDeg, leanDeg: 0 }, plain).findLastIndex((piece) => piece.of === of);
  // Looked at from medial the column, which stands medially, covers the bone; from lateral the bone covers the column.
  expect(lastFrom(90, 'column')).toBeGreaterThan(lastFrom(90, 'bone'));
  expect(lastFrom(270, 'bone')).toBeGreaterThan(lastFrom(270, 'column'));
});

test('a corridor is seen from its own side of the bone only, and no wider than it is', () => {
  const withCorridor = { ...testCase, corridors: [{ fromMm: 5, toMm: 15, aboutDeg: [-30, 30] as [number, number] }] };
  const seen = (turnDeg: number) =>
    spacePieces(withCorridor, placement, { turnDeg, leanDeg: 0 }, plain).filter(({ of }) => of === 'corridor');
  expect(seen(270)).toEqual([]);
  const u = seen(90).flatMap(({ face }) => face.map(([across]) => across));
  const bone = spacePieces(withCorridor, placement, { turnDeg: 90, leanDeg: 0 }, plain)
    .filter(({ of, alongMm }) => of === 'bone' && alongMm > 5 && alongMm < 15)
    .flatMap(({ face }) => face.map(([across]) => across));
  // Half the bone is seen from medial; a third of half a turn takes less of its width than all of it.
  expect(Math.max(...u)).toBeLessThan(Math.max(...bone));
  expect(Math.max(...u)).toBeGreaterThan(0);
});

test('the skin lies outside the bone by its depth and hides nothing', () => {
  const withSkin = { ...testCase, softTissueMm: [{ sMm: 0, depthMm: 4 }] };
  const pieces = spacePieces(withSkin, placement, { turnDeg: 90, leanDeg: 0 }, { inside: false, skin: true });
  const widest = (of: string) =>
    Math.max(...pieces.filter((p) => p.of === of).flatMap(({ lines }) => lines.flat().map(([u]) => u)));
  expect(widest('skin') - widest('bone')).toBeCloseTo(4, 6);
  expect(pieces.filter(({ of }) => of === 'skin').every(({ face }) => face.length === 0)).toBe(true);
});
