import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CORTICES, healingSeries, type Recheck, rustOf } from './healing-series.ts';

describe('scores of union', () => {
  const recheck = (day: number, ...s: readonly (number | null)[]): Recheck => ({
    day,
    scores: { medial: s[0]!, lateral: s[1]!, cranial: s[2]!, caudal: s[3]! },
  });

  test('mRUST: 4 to 16, and the species disagree on union (rat 15, mouse 13, human 11)', () => {
    const series = healingSeries('mRUST', [recheck(42, 3, 3, 4, 3), recheck(14, 1, 2, 2, 1), recheck(28, 3, 3, 3, 2)]);
    expect(series.points.map((p) => p.total)).toEqual([6, 11, 13]);
    expect(series.points.map((p) => p.change)).toEqual([null, 5, 2]);
    expect([series.lowest, series.highest]).toEqual([4, 16]);
    expect(series.thresholds.map((t) => [t.species, t.score, t.reachedOnDay])).toEqual([
      ['rat', 15, null],
      ['mouse', 13, 42],
      ['human', 11, 28],
    ]);
  });
  test('RUST: 4 to 12, union at 10; below 7 is remarked on', () => {
    const series = healingSeries('RUST', [recheck(10, 1, 1, 2, 2)]);
    expect(series.highest).toBe(12);
    expect(series.thresholds.every((t) => t.score === 10)).toBe(true);
    expect(series.remarks.join()).toContain('RUST 6, below 7');
  });
  test('a cortex that is not seen leaves no total, and change counts only what both films show', () => {
    const series = healingSeries('RUST', [recheck(10, 1, 1, 1, 1), recheck(20, 2, null, 2, 3)]);
    expect(series.points[1]).toMatchObject({ total: null, seen: 3, change: 4 });
  });
  test('a cortex scored lower than when it was last seen is remarked on, across a film that hides it', () => {
    const series = healingSeries('RUST', [
      recheck(10, 3, 2, 2, 2),
      recheck(20, null, 2, 2, 2),
      recheck(30, 2, 3, 3, 3),
    ]);
    expect(series.points[2]!.fell).toEqual(['medial']);
  });
  test.each([
    ['a score off the scale', [recheck(1, 4, 1, 1, 1)]],
    ['half a score', [recheck(1, 1.5, 1, 1, 1)]],
    ['two on one day', [recheck(1, 1, 1, 1, 1), recheck(1, 2, 1, 1, 1)]],
    ['a day before the operation', [recheck(-3, 1, 1, 1, 1)]],
  ])('%s is refused', (_, rechecks) => {
    expect(() => healingSeries('RUST', rechecks)).toThrow(InputError);
  });
  test('order of entry does not count, and totals stay within the scale', () => {
    const score = fc.integer({ min: 1, max: 4 });
    const list = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 90 }), score, score, score, score), {
      selector: (r) => r[0],
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(list, (rows) => {
        const rechecks = rows.map(([day, ...s]) => recheck(day, ...s));
        const series = healingSeries('mRUST', rechecks);
        expect(healingSeries('mRUST', rechecks.toReversed())).toEqual(series);
        for (const p of series.points) expect(p.total! >= series.lowest && p.total! <= series.highest).toBe(true);
        for (const p of series.points) for (const c of CORTICES) expect(rustOf(p.scores[c]!)).toBeLessThanOrEqual(3);
      }),
      { numRuns: 50 },
    );
  });
});
