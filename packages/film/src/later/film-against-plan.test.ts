/** The whole way on a projected film: three points clicked to the pixel, pins looked for, departures in mm and degrees. */
import { describe, expect, test } from 'vitest';
import { shadowOf } from '../projector/project.ts';
import { CAMERA, filmOf, IM, PINS, type Pin, place } from './drawn-repair.ts';
import { findPins } from './find-pins.ts';
import { expectedRods, type PlannedRod, pinsAgainstPlan } from './pins-against-plan.ts';
import { isPlaced, type PlanPoint, placePlan } from './place-plan.ts';

/** The bone's proximal end lies this far before the middle of the film's limb. */
const PROXIMAL_MM = 20;
const [ORIGIN_X, ORIGIN_Y] = place(0, 0);
const inPlan = ([x, y]: readonly [number, number, number]): PlanPoint => [y - ORIGIN_Y + PROXIMAL_MM, x - ORIGIN_X];

/** Clicked on the film to the nearest pixel. */
const clicked = (across: number, along: number) => {
  const [c, r] = shadowOf(CAMERA, place(across, along));
  return { plan: inPlan(place(across, along)), film: [Math.round(c), Math.round(r)] as const };
};

/** A plan from which the pin departs by just this. */
function departed(pin: Pin, i: number, off: { alongMm: number; tiltDeg: number; depthMm: number }): PlannedRod {
  const [near, tip] = [inPlan(pin.near), inPlan(pin.tip)];
  const wall = 2;
  const share = (near[1] - wall) / (near[1] - tip[1]);
  const entered: PlanPoint = [near[0] + share * (tip[0] - near[0]), wall];
  const entry: PlanPoint = [entered[0] - off.alongMm, wall];
  const lean = Math.atan2(tip[0] - near[0], near[1] - tip[1]) - (off.tiltDeg * Math.PI) / 180;
  const at = (deep: number): PlanPoint => [entry[0] + deep * Math.sin(lean), wall - deep * Math.cos(lean)];
  const deep = Math.hypot(tip[0] - entered[0], tip[1] - entered[1]) - off.depthMm;
  return { name: `P${i + 1}`, kind: 'pin', near: at(-8), tip: at(deep), entry, diameterMm: pin.diameterMm };
}

const DEPARTURES = [
  { alongMm: 1.2, tiltDeg: 4, depthMm: 0.6 },
  { alongMm: -0.8, tiltDeg: -6, depthMm: -1.5 },
  { alongMm: 0, tiltDeg: 0, depthMm: 0 },
];

describe('a film after the repair', () => {
  const placing = placePlan([clicked(0, -20), clicked(0.5, 19), clicked(12, -14)]);
  if (!isPlaced(placing)) throw new Error(placing.why);
  const planned = PINS.map((pin, i) => departed(pin, i, DEPARTURES[i]!));
  const rods = findPins(filmOf([...PINS, IM]), expectedRods(placing, planned), { reachPx: 30, turnDeg: 12 });
  const found = pinsAgainstPlan(placing, planned, rods);

  test.each([0, 1, 2])('departures of pin %d come back within three sds, and the sds are small', (i) => {
    const { placeMm, tiltDeg, depthMm, diameterMm } = found[i]!;
    const check = (m: typeof placeMm, truth: number, largestSd: number) => {
      expect(Math.abs(m.value! - truth)).toBeLessThan(3 * m.sd!);
      // a quarter of the least limit (a pin diameter of 0.9 mm, 5 degrees): the verdict is worth having
      expect(m.sd!).toBeLessThan(largestSd);
    };
    check(placeMm, DEPARTURES[i]!.alongMm, 0.22);
    check(tiltDeg, DEPARTURES[i]!.tiltDeg, 1.2);
    check(depthMm, DEPARTURES[i]!.depthMm, 0.35);
    check(diameterMm, PINS[i]!.diameterMm, 0.1);
  });

  test('verdicts follow: too far, bent and short; the last as planned', () => {
    const verdicts = found.map((f) => f.findings.map((each) => each.verdict));
    expect(verdicts).toEqual([
      ['watch', 'good', 'good'],
      ['good', 'watch', 'watch'],
      ['good', 'good', 'good'],
    ]);
  });
});
