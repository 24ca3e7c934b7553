import { expect, test } from 'vitest';
import { place } from '../../drawing/geometry/placement.ts';
import { sideProfile } from '../../drawing/geometry/side-profile.ts';
import { testCase, testConstruct } from '../test-case.ts';
import { BALLOON_PX, layOut, spreadBalloons } from './layout.ts';

test('everything is drawn at one scale and inside the drawing', () => {
  for (const width of [390, 700, 1400]) {
    const placement = place(testCase, testConstruct);
    const profile = sideProfile(testCase, placement.aboutDeg);
    const { scale, widthPx, heightPx, lengthMm } = layOut(testCase, placement, profile, width, 330);
    expect(scale.x(1) - scale.x(0)).toBeCloseTo(scale.y(0) - scale.y(1), 9);
    expect(scale.x(lengthMm)).toBeLessThan(widthPx);
    expect(heightPx).toBeLessThanOrEqual(331);
  }
});

test.each([[[10, 10, 10, 10]], [[0, 5, 400, 401, 402, 900]], [[300, 100, 105, 299, 110, 120, 600, 601]]])(
  'no two balloons overlap, however close their pins stand: %j',
  (wanted) => {
    const placed = spreadBalloons(wanted);
    const order = wanted.map((_, i) => i).toSorted((a, b) => wanted[a]! - wanted[b]!);
    for (let k = 1; k < order.length; k += 1)
      expect(placed[order[k]!]! - placed[order[k - 1]!]!).toBeGreaterThanOrEqual(2 * BALLOON_PX);
  },
);
