/** What must hold of any construct, whatever its sizes. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessConstruct, evaluateNominal } from '../assess.ts';
import { LOADS } from '../model/plan.ts';
import { type PinAt, type StraightBone, straightBone } from '../straight-bone.ts';

const arbitraryBone: fc.Arbitrary<StraightBone> = fc
  .record({
    outerMm: fc.double({ min: 2, max: 9, noNaN: true }),
    bore: fc.double({ min: 0, max: 0.85, noNaN: true }),
    slender: fc.double({ min: 7, max: 14, noNaN: true }),
    ratio: fc.double({ min: 0.12, max: 0.35, noNaN: true }),
    spots: fc.array(fc.double({ min: 0.1, max: 0.9, noNaN: true }), { minLength: 2, maxLength: 4 }),
    tilts: fc.array(fc.double({ min: -35, max: 35, noNaN: true }), { minLength: 8, maxLength: 8 }),
    abouts: fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 8, maxLength: 8 }),
    columnShare: fc.double({ min: 0.8, max: 2.5, noNaN: true }),
    clearanceMm: fc.double({ min: 0, max: 15, noNaN: true }),
    gapMm: fc.constantFrom(0, 0.05, 0.6, 2),
    twoColumns: fc.boolean(),
    im: fc.constantFrom(null, 'free', 'tied'),
    grip: fc.constantFrom('usual' as const, 'bonded' as const),
  })
  .map(({ outerMm, bore, slender, ratio, spots, tilts, abouts, columnShare, gapMm, im, ...rest }) => {
    const lengthMm = outerMm * slender;
    const half = (lengthMm - gapMm) / 2;
    const places = spots.flatMap((spot) => [spot * half, lengthMm - spot * half]);
    return {
      ...rest,
      lengthMm,
      outerMm,
      canalMm: outerMm * bore,
      gapMm,
      pinMm: outerMm * ratio,
      pins: places.map((s, i): PinAt => [s, tilts[i]!, abouts[i]!]),
      columnMm: outerMm * columnShare,
      ...(im ? { im: { diameterMm: Math.max(0.4, outerMm * bore * 0.5), tiedIn: im === 'tied' } } : {}),
      loads: { axialN: outerMm ** 2, bendingNmm: outerMm ** 3, torsionNmm: outerMm ** 3 / 2 },
    };
  });

/** A constant seed: a failure stays a failure. */
const RUNS = { numRuns: 25, seed: 20 };

describe('any construct', () => {
  test('has finite figures, positive stiffness, and a place that is weakest', () => {
    fc.assert(
      fc.property(arbitraryBone, (bone) => {
        const patientCase = straightBone(bone);
        const plan = evaluateNominal(patientCase, patientCase.construct!);
        for (const load of LOADS) {
          const { stiffness, gapMotionMm, margin } = plan.loads[load];
          expect(stiffness).toBeGreaterThan(0);
          expect(Number.isFinite(stiffness) && Number.isFinite(gapMotionMm)).toBe(true);
          expect(margin.p50).toBeGreaterThan(0);
          expect(margin.weakest).not.toBe('');
        }
        expect(JSON.stringify(plan.pins)).not.toContain('null');
      }),
      RUNS,
    );
  });

  test('turned about the bone as a whole, a round bone and its frame are as stiff as before', () => {
    fc.assert(
      fc.property(arbitraryBone, fc.double({ min: -180, max: 180, noNaN: true }), (bone, turnDeg) => {
        const turned = bone.pins.map(([s, tilt = 0, about = 0]): PinAt => [s, tilt, about + turnDeg]);
        const [a, b] = [bone, { ...bone, pins: turned }].map((one) => {
          const patientCase = straightBone({
            ...one,
            gapMm: 2,
            loads: { axialN: 0.01, bendingNmm: 0.01, torsionNmm: 0.01 },
          });
          return evaluateNominal(patientCase, patientCase.construct!).loads;
        });
        // Small loads leave gap and canal open, so that rim points do not count; 1e-6 is the solver's promise.
        for (const load of LOADS) expect(b![load].stiffness / a![load].stiffness).toBeCloseTo(1, 5);
      }),
      RUNS,
    );
  });

  test('a stiffer grip never makes a frame with an open gap softer', () => {
    fc.assert(
      fc.property(arbitraryBone, (bone) => {
        const open = { ...bone, gapMm: 2, loads: { axialN: 0.01, bendingNmm: 0.01, torsionNmm: 0.01 } };
        const [usual, bonded] = (['usual', 'bonded'] as const).map((grip) => {
          const patientCase = straightBone({ ...open, grip });
          return evaluateNominal(patientCase, patientCase.construct!).loads;
        });
        for (const load of LOADS) expect(bonded![load].stiffness).toBeGreaterThan(usual![load].stiffness * (1 - 1e-6));
      }),
      RUNS,
    );
  });

  test('assessed with samples, every percentile is finite and in order', () => {
    fc.assert(
      fc.property(arbitraryBone, (bone) => {
        const patientCase = straightBone(bone);
        const plan = assessConstruct(patientCase, patientCase.construct!, { samples: 10, seed: 1 });
        for (const load of LOADS) {
          const { p05, p50, p95 } = plan.loads[load].margin;
          expect(p05 <= p50 && p50 <= p95 && Number.isFinite(p95)).toBe(true);
        }
      }),
      { numRuns: 8, seed: 21 },
    );
  });
});
