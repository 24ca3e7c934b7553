import { describe, expect, test } from 'vitest';
import { expectedRods, type PlannedRod, pinsAgainstPlan } from './pins-against-plan.ts';
import { isPlaced, onFilm, type Placing, type PlanPoint, placePlan } from './place-plan.ts';
import type { FoundRod } from './rod.ts';

describe('pins against the plan', () => {
  /** 10 pixels a mm, s down the film, w to the right. */
  const film = ([s, w]: PlanPoint) => [200 + 10 * w, 50 + 10 * s] as const;
  const placing = placePlan(
    (
      [
        [0, 0],
        [40, 0],
        [20, 12],
      ] as const
    ).map((plan) => ({ plan, film: film(plan) })),
  ) as Placing;
  const pin: PlannedRod = { name: 'P1', kind: 'pin', near: [10, 12], tip: [10, -3], entry: [10, 2], diameterMm: 1 };
  const im: PlannedRod = { name: 'IM', kind: 'im', near: [-3, 0], tip: [34, 0], entry: [20, 0], diameterMm: 1.2 };
  const rod = (name: string, near: PlanPoint, tip: PlanPoint, widthPx: number): FoundRod => ({
    name,
    line: [film(near), film(tip)],
    acrossSdPx: 0.05,
    directionSdDeg: 0.1,
    widthPx,
    widthSdPx: 0.2,
    near: { place: film(near), sdPx: 0.4 },
    tip: { place: film(tip), sdPx: 0.4 },
  });

  test('the plan is laid where it was drawn, and its rods are looked for there', () => {
    expect(isPlaced(placing)).toBe(true);
    const [wanted] = expectedRods(placing, [pin]);
    expect(wanted!.widthPx).toBeCloseTo(10, 9);
    expect(wanted!.tip[0]).toBeCloseTo(film(pin.tip)[0], 9);
    expect(onFilm(placing, [7, 3])[1]).toBeCloseTo(120, 9);
  });

  test('a pin 1.5 mm too far distal, its tip 6 degrees further, 1.7 mm too deep', () => {
    const lean = Math.tan((6 * Math.PI) / 180);
    // through (11.5, 2), leaning distally towards the tip
    const at = (w: number): PlanPoint => [11.5 + (2 - w) * lean, w];
    const depth = 5 + 1.7;
    const tipW = 2 - depth * Math.cos((6 * Math.PI) / 180);
    const [found] = pinsAgainstPlan(placing, [pin], [rod('P1', at(12), at(tipW), 10)]);
    expect(found!.placeMm.value).toBeCloseTo(1.5, 9);
    expect(found!.tiltDeg.value).toBeCloseTo(6, 9);
    expect(found!.depthMm.value).toBeCloseTo(1.7, 9);
    expect(found!.diameterMm.value).toBeCloseTo(1, 9);
    expect(found!.findings.map((f) => f.verdict)).toEqual(['watch', 'watch', 'watch']);
    expect(found!.findings[0]!.because).toContain('P1: 1.5 mm');
    expect(found!.findings[0]!.because).toContain('distal of its planned place');
  });

  test('an IM pin 1 mm to the positive side, 4 mm short', () => {
    const [found] = pinsAgainstPlan(placing, [im], [rod('IM', [-3, 1], [30, 1], 12)]);
    expect(found!.placeMm.value).toBeCloseTo(1, 9);
    expect(found!.tiltDeg.value).toBeCloseTo(0, 9);
    expect(found!.depthMm.value).toBeCloseTo(-4, 9);
    expect(found!.findings[2]).toMatchObject({ verdict: 'stop', because: expect.stringContaining('short') });
  });

  test('as planned is good in all; not found is unknown and says why', () => {
    const [good] = pinsAgainstPlan(placing, [pin], [rod('P1', pin.near, pin.tip, 10)]);
    expect(good!.findings.every((f) => f.verdict === 'good')).toBe(true);
    const [lost] = pinsAgainstPlan(placing, [pin], [{ name: 'P1', why: 'nothing bright there' }]);
    expect(lost!.findings.every((f) => f.verdict === 'unknown')).toBe(true);
    expect(lost!.findings[0]!.because).toContain('nothing bright there');
  });

  test('without its tip a pin has place and tilt but no depth', () => {
    const cut = { ...rod('P1', pin.near, pin.tip, 10), tip: { place: null, sdPx: null, why: 'it runs off the film' } };
    const [found] = pinsAgainstPlan(placing, [pin], [cut]);
    expect(found!.placeMm.value).toBeCloseTo(0, 9);
    expect(found!.depthMm.why).toContain('off the film');
  });
});
