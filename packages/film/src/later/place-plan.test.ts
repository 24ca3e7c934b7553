import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pixel } from '../model/trace.ts';
import { seededRandom } from '../projector/random.ts';
import {
  isPlaced,
  type Match,
  onFilm,
  onPlan,
  type Placing,
  type PlanPoint,
  placePlan,
  placeSdMm,
} from './place-plan.ts';

const POINTS: readonly PlanPoint[] = [
  [0, 0],
  [42, 1.5],
  [12, 14],
];

/** The film that shows the plan so. */
const shown =
  (pxPerMm: number, turnDeg: number, isMirrored: boolean, [c, r]: Pixel) =>
  ([s, w]: PlanPoint): Pixel => {
    const a = (turnDeg * Math.PI) / 180;
    const v = isMirrored ? -w : w;
    return [c + pxPerMm * (s * Math.cos(a) - v * Math.sin(a)), r + pxPerMm * (s * Math.sin(a) + v * Math.cos(a))];
  };

const placed = (matches: readonly Match[], isMirrored?: boolean): Placing => {
  const found = placePlan(matches, isMirrored);
  if (!isPlaced(found)) throw new Error(found.why);
  return found;
};

test('any size, turn, shift and side of the film comes back from three points', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 4, max: 40, noNaN: true }),
      fc.double({ min: -179, max: 179, noNaN: true }),
      fc.boolean(),
      fc.tuple(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true })),
      (scale, turn, isMirrored, at) => {
        const film = shown(scale, turn, isMirrored, at);
        const found = placed(POINTS.map((plan) => ({ plan, film: film(plan) })));
        expect(found.isMirrored).toBe(isMirrored);
        expect(found.pxPerMm.value).toBeCloseTo(scale, 8);
        expect(found.turnDeg.value).toBeCloseTo(turn, 8);
        const there: PlanPoint = [31, -7];
        const [c, r] = film(there);
        expect(onFilm(found, there)[0]).toBeCloseTo(c, 6);
        expect(onFilm(found, there)[1]).toBeCloseTo(r, 6);
        expect(onPlan(found, [c, r])[1]).toBeCloseTo(-7, 8);
      },
    ),
  );
});

test('the sd of a placed point is what clicks within a pixel do to it', () => {
  const random = seededRandom(11);
  const film = shown(12, 84, true, [400, 60]);
  const there: PlanPoint = [60, 5];
  const exact = film(there);
  const n = 2000;
  let square = 0;
  let said = 0;
  for (let i = 0; i < n; i++) {
    const found = placed(
      POINTS.map((plan) => {
        const [c, r] = film(plan);
        return { plan, film: [c + random.between(-0.5, 0.5), r + random.between(-0.5, 0.5)] as const };
      }),
      true,
    );
    square += (onFilm(found, there)[0] - exact[0]) ** 2;
    said += (placeSdMm(found, there) * 12) ** 2;
  }
  // the residual of three points is a poor guess of the click, so the sd is on the wide side; never below it
  expect(Math.sqrt(said / square)).toBeGreaterThan(0.98);
  expect(Math.sqrt(said / square)).toBeLessThan(1.4);
});

describe('what cannot be placed', () => {
  const film = shown(10, 30, false, [0, 0]);
  const onLine: readonly PlanPoint[] = [
    [0, 0],
    [20, 0.1],
    [45, 0],
  ];
  const line = onLine.map((plan) => ({ plan, film: film(plan) }));
  test('points on a line do not say which side is which', () => {
    expect(placePlan(line)).toMatchObject({ why: expect.stringContaining('line') });
  });
  test('unless it is said', () => {
    expect(placed(line, false).turnDeg.value).toBeCloseTo(30, 8);
  });
  test('two points are refused', () => {
    expect(() => placePlan(line.slice(0, 2))).toThrow(InputError);
  });
  test('a point matched wrongly is remarked on', () => {
    const wrong = POINTS.map((plan, i) => ({ plan, film: i === 1 ? film([25, 1.5]) : film(plan) }));
    expect(placed(wrong, false).warnings.join()).toMatch(/matched wrongly/);
  });
});
