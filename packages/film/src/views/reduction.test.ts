import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRAWN, type DrawnBone, drawnTrace } from '../correct/drawn-trace.ts';
import type { Pixel, TracedView } from '../model/trace.ts';
import { lineFrame, pointAt } from '../trace/frame.ts';
import { fullReduction, reducedBy, reductionFacts } from './reduction.ts';

/** A bone that runs down the film: across (+90 degrees) is -column, so +column medial means a positive offset is lateral. */
function view(bone: Partial<DrawnBone>, columnTowards: TracedView['columnTowards']): TracedView {
  const trace = drawnTrace({ ...DRAWN, ...bone });
  const { axis } = trace.segments[0]!;
  const frame = lineFrame(axis.from, axis.to);
  const at = frame.lengthPx;
  return { trace, columnTowards, fractureLine: [pointAt(frame, at, -40), pointAt(frame, at, 40)] };
}

/** Middles of the broken faces as they were drawn. */
function ends({ trace }: TracedView): readonly [Pixel, Pixel] {
  return [trace.segments[0]!.axis.to, trace.segments[1]!.axis.from];
}

describe('facts of a known displacement', () => {
  const cc = view({ angulationDeg: -19, offsetMm: -1.2, gapMm: -2 }, 'medial');
  const ml = view({ angulationDeg: 14, offsetMm: 0.9, gapMm: -2 }, 'cranial');
  const facts = reductionFacts(cc, ml, 90, { craniocaudal: ends(cc), mediolateral: ends(ml) });

  test('19 and 14 degrees are 23.03 (published 24 by ruler, PMC4799231 fig. 5)', () => {
    expect(facts.angulationDeg[0].value).toBeCloseTo(19, 6);
    expect(facts.angulationDeg[1].value).toBeCloseTo(-14, 6);
    expect(Math.abs(facts.trueAngulationDeg.value! - 23.03)).toBeLessThan(0.005);
  });
  test('1.2 mm medial and 0.9 mm caudal are 1.5 mm; widths of 3 mm keep 60 and 70 %', () => {
    expect(facts.offsetMm[0].value).toBeCloseTo(1.2, 6);
    expect(facts.offsetMm[1].value).toBeCloseTo(-0.9, 6);
    expect(facts.trueOffsetMm.value).toBeCloseTo(1.5, 6);
    expect(facts.appositionShare[0].value).toBeCloseTo(0.6, 6);
    expect(facts.appositionShare[1].value).toBeCloseTo(0.7, 6);
  });
  test('two circles one radius apart share 39.1 % of their area (lens, closed form)', () => {
    // 2/3 - sqrt(3)/(2 pi)
    expect(facts.appositionOfSection.value).toBeCloseTo(2 / 3 - Math.sqrt(3) / 2 / Math.PI, 6);
  });
  test('an override of 2 mm is a shortening of 2 mm, and it is said that the ends do not touch', () => {
    expect(facts.shorteningMm.value).toBeCloseTo(2, 6);
    expect(facts.warnings.join()).toContain('override');
  });
  test('round bones show no turn', () => {
    expect(facts.rotationDeg).toMatchObject({ value: null, sd: null });
    expect(facts.rotationDeg.why).toMatch(/round/);
  });
  test('without marked ends there is no shortening', () => {
    expect(reductionFacts(cc, ml, 90).shorteningMm.why).toMatch(/mark/);
  });
  test('fully reduced, every known number is 0 and the ends face each other', () => {
    const done = reducedBy(facts, fullReduction(facts));
    expect(done.trueAngulationDeg.value).toBeCloseTo(0, 9);
    expect(done.trueOffsetMm.value).toBeCloseTo(0, 9);
    expect(done.shorteningMm.value).toBeCloseTo(0, 9);
    expect(done.appositionOfSection.value).toBeCloseTo(1, 9);
    expect(done.trueAngulationDeg.sd).toBe(facts.trueAngulationDeg.sd);
  });
});

test('a film that shows lateral at +column gives the same bone', () => {
  const ml = view({}, 'cranial');
  const a = reductionFacts(view({ angulationDeg: 8, offsetMm: 0.7 }, 'medial'), ml, 90);
  const b = reductionFacts(view({ angulationDeg: -8, offsetMm: -0.7 }, 'lateral'), ml, 90);
  expect(a.offsetMm[0].value).toBeCloseTo(b.offsetMm[0].value!, 9);
  expect(a.angulationDeg[0].value).toBeCloseTo(b.angulationDeg[0].value!, 9);
});

test('views 75 degrees apart: an offset of 1 mm half-way between them is 1 mm', () => {
  const seen = Math.cos((37.5 * Math.PI) / 180);
  const facts = reductionFacts(view({ offsetMm: -seen }, 'medial'), view({ offsetMm: -seen }, 'cranial'), 75);
  expect(facts.trueOffsetMm.value).toBeCloseTo(1, 6);
});

test('moves add up, and half a reduction leaves half of every number seen', () => {
  const cc = view({ angulationDeg: -12, offsetMm: -1 }, 'medial');
  const facts = reductionFacts(cc, view({ angulationDeg: 6, offsetMm: 0.5 }, 'cranial'), 90, {
    craniocaudal: ends(cc),
  });
  const mm = fc.double({ min: -3, max: 3, noNaN: true });
  const deg = fc.double({ min: -15, max: 15, noNaN: true });
  const move = fc.record({ translationMm: fc.tuple(mm, mm), angulationDeg: fc.tuple(deg, deg), lengthMm: mm });
  fc.assert(
    fc.property(move, move, (p, q) => {
      const twice = reducedBy(reducedBy(facts, p), q);
      const once = reducedBy(facts, {
        translationMm: [p.translationMm[0] + q.translationMm[0], p.translationMm[1] + q.translationMm[1]],
        angulationDeg: [p.angulationDeg[0] + q.angulationDeg[0], p.angulationDeg[1] + q.angulationDeg[1]],
        lengthMm: p.lengthMm + q.lengthMm,
      });
      expect(twice.trueAngulationDeg.value).toBeCloseTo(once.trueAngulationDeg.value!, 8);
      expect(twice.trueOffsetMm.value).toBeCloseTo(once.trueOffsetMm.value!, 8);
      expect(twice.shorteningMm.value).toBeCloseTo(once.shorteningMm.value!, 8);
    }),
    { numRuns: 50 },
  );
  const half = fullReduction(facts);
  const left = reducedBy(facts, {
    translationMm: [half.translationMm[0] / 2, half.translationMm[1] / 2],
    angulationDeg: [half.angulationDeg[0] / 2, half.angulationDeg[1] / 2],
  });
  expect(left.offsetMm[0].value).toBeCloseTo(facts.offsetMm[0].value! / 2, 9);
  expect(left.angulationDeg[1].value).toBeCloseTo(facts.angulationDeg[1].value! / 2, 9);
});

describe('a turn of an oval bone, 4 by 3 mm', () => {
  /** Width of the ellipse turned by `deg`, seen in the view at `at`. */
  const width = (deg: number, at: number) => {
    const t = ((at - deg) * Math.PI) / 180;
    return Math.hypot(4 * Math.cos(t), 3 * Math.sin(t));
  };
  const turned = (deg: number, size = 1, proximal = 0) =>
    reductionFacts(
      view({ outerMm: [width(proximal, 0), size * width(deg, 0)] }, 'medial'),
      view({ outerMm: [width(proximal, 90), size * width(deg, 90)] }, 'cranial'),
      90,
    ).rotationDeg;

  test.each([0, 20, 45, 70, 90])('%d degrees come back, with a wide sd', (deg) => {
    // closed form, but the square root at 0 and 90 makes 1e-8 of a rounding error of 1e-16
    expect(turned(deg).value!).toBeCloseTo(deg, 4);
    expect(turned(deg).sd!).toBeGreaterThan(10);
  });
  test('the sense does not show', () => {
    expect(turned(-30).value).toBeCloseTo(turned(30).value!, 6);
  });
  test('fragments of different size cannot be compared', () => {
    expect(turned(20, 1.15).why).toMatch(/size/);
  });
});
