import { describe, expect, test } from 'vitest';
import type { Measured } from '../model/trace.ts';
import type { ReductionFacts } from '../views/reduction.ts';
import { alignmentChange, alignmentFindings } from './alignment-findings.ts';

const sure = (value: number, sd = 0.1): Measured => ({ value, sd });
const none: Measured = { value: null, sd: null, why: 'not seen' };

describe('alignment', () => {
  const facts: ReductionFacts = {
    lengthMm: sure(50, 0),
    widthMm: [4, 4],
    betweenViewsDeg: 90,
    angulationDeg: [sure(12), sure(-4)],
    trueAngulationDeg: sure(12.6),
    planeFromCraniocaudalDeg: sure(-18),
    offsetMm: [sure(2.4), sure(0)],
    trueOffsetMm: sure(2.4),
    shorteningMm: sure(6),
    appositionShare: [sure(0.4, 0.02), sure(1, 0.02)],
    appositionOfSection: sure(0.3),
    rotationDeg: none,
    warnings: [],
  };
  const after: ReductionFacts = {
    ...facts,
    angulationDeg: [sure(3), sure(2)],
    shorteningMm: sure(0.5),
    appositionShare: [sure(0.9, 0.02), sure(0.8, 0.02)],
  };
  test('limits: 10 degrees frontal, half the width, 10 % of the length', () => {
    expect(alignmentFindings(facts).map((f) => [f.id, f.verdict])).toEqual([
      ['frontal', 'stop'],
      ['sagittal', 'good'],
      ['rotation', 'unknown'],
      ['apposition', 'watch'],
      ['shortening', 'watch'],
    ]);
    // 6 of 50 mm
    expect(alignmentFindings(facts)[4]!.measured.value).toBeCloseTo(12, 9);
  });
  test('before and after, with what was gained', () => {
    const change = alignmentChange(facts, after);
    expect(change.map((c) => c.after.verdict)).toEqual(['good', 'good', 'unknown', 'good', 'good']);
    expect(change[0]!.gained).toBeCloseTo(9, 9);
    expect(change[2]!.gained).toBeNull();
    // worse view 40 to 80 %
    expect(change[3]!.gained).toBeCloseTo(40, 9);
  });
  test('a value that its sd leaves on both sides of a limit says so', () => {
    const [frontal] = alignmentFindings({ ...facts, angulationDeg: [sure(4.5, 1), sure(0)] });
    expect(frontal).toMatchObject({ verdict: 'good', because: expect.stringContaining('not sure enough') });
  });
});
