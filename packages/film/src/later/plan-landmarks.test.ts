import { describe, expect, test } from 'vitest';
import { isPlaced, type Match, onFilm, type PlanPoint, placePlan } from './place-plan.ts';
import { type LandmarkFigure, mirroredBy, planLandmarks } from './plan-landmarks.ts';
import { clicksByPlan } from './trace-by-plan.ts';

const walls = (from: number, to: number): LandmarkFigure['fragments'][number] => {
  const s = Array.from({ length: 2 * (to - from) + 1 }, (_, i) => from + i / 2);
  return { outer: [s.map((at): PlanPoint => [at, -2]), s.map((at): PlanPoint => [at, 3])] };
};
const FIGURE: LandmarkFigure = {
  lengthMm: 60,
  fragments: [walls(0, 29), walls(31, 60)],
  pins: [
    {
      line: [
        [10, -2.5],
        [10, 15],
      ],
      diameterMm: 1,
      nearWall: [10, 3],
    },
  ],
  im: null,
};

/** The bone runs down the film; medial to the right unless turned over. */
const down =
  (side: 1 | -1) =>
  ([s, w]: PlanPoint): Match => ({ plan: [s, w], film: [200 + side * 8 * w, 50 + 8 * s] });

describe('landmarks', () => {
  const [proximal, distal, fracture] = planLandmarks(FIGURE);
  test('the usual three are of bone: both ends and the middle of the broken end', () => {
    expect([proximal, distal, fracture].map((l) => l!.at)).toEqual([
      [0, 0],
      [60, 0],
      [29, 0.5],
    ]);
  });
  test.each([
    [1, 'medial', 20],
    [1, 'lateral', -20],
    [-1, 'cranial', 20],
  ] as const)(
    'three points nearly on a line lay the plan right way round: side %d, %s to the right',
    (side, to, px) => {
      const matches = [proximal!, distal!, fracture!].map(({ at }) => down(side)([at[0], 0]));
      const isMirrored = mirroredBy(matches, to);
      const placing = placePlan(matches, isMirrored!);
      if (!isPlaced(placing)) throw new Error(placing.why);
      // 2.5 mm towards w at 8 pixels a mm, to the right where that side is there
      expect(onFilm(placing, [30, 2.5])[0] - 200).toBeCloseTo(px, 6);
    },
  );
  test('a bone along the rows has no side at the right edge', () => {
    const along = (s: number): Match => ({ plan: [s, 0], film: [10 + 8 * s, 100] });
    expect(mirroredBy([along(0), along(60)], 'medial')).toBeUndefined();
    expect(mirroredBy([along(0)], 'medial')).toBeUndefined();
  });
});

test('clicks by the plan lie in the middle of the bone, off the joints and the fracture, line and ends where it has them', () => {
  const placing = placePlan([down(1)([0, 0]), down(1)([60, 0]), down(1)([30, 10])]);
  if (!isPlaced(placing)) throw new Error(placing.why);
  const { segments, fractureLine, boneEnds } = clicksByPlan(placing, FIGURE)!;
  for (const { from, to } of segments) for (const [col] of [from, to]) expect(col).toBeCloseTo(204, 6);
  expect(segments[0].to[1]).toBeLessThan(50 + 8 * 29);
  expect(segments[1].from[1]).toBeGreaterThan(50 + 8 * 31);
  expect(fractureLine.map(([, row]) => row)).toEqual([expect.closeTo(290, 6), expect.closeTo(290, 6)]);
  // past both walls, -2 and 3 mm
  expect(fractureLine[0]![0]).toBeLessThan(184);
  expect(fractureLine[1]![0]).toBeGreaterThan(224);
  expect(boneEnds).toEqual([
    [expect.closeTo(200, 6), expect.closeTo(50, 6)],
    [expect.closeTo(200, 6), expect.closeTo(530, 6)],
  ]);
});
