import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judged, type Limits, verdictOf } from './limits.ts';

const ORDER = { good: 0, watch: 1, stop: 2 };

test('a limit itself still passes, the next figure does not', () => {
  const above: Limits = { worse: 'above', watch: 25, stop: 30 };
  expect([25, 25.01, 30, 30.01].map((v) => verdictOf(v, above))).toEqual(['good', 'watch', 'watch', 'stop']);
  const below: Limits = { worse: 'below', watch: 5, stop: 2.5 };
  expect([5, 4.99, 2.5, 2.49].map((v) => verdictOf(v, below))).toEqual(['good', 'watch', 'watch', 'stop']);
});

test('a sum of tenths that misses its limit by the last bit still passes', () => {
  expect(verdictOf(0.1 + 0.2, { worse: 'above', watch: null, stop: 0.3 })).toBe('good');
});

test('a worse value never has a better verdict', () => {
  const limits = fc.record({
    worse: fc.constantFrom('above' as const, 'below' as const),
    watch: fc.option(fc.double({ min: -50, max: 50, noNaN: true })),
    stop: fc.option(fc.double({ min: -50, max: 50, noNaN: true })),
  });
  const value = fc.double({ min: -100, max: 100, noNaN: true });
  fc.assert(
    fc.property(limits, value, value, (given, a, b) => {
      const [better, worse] = a < b === (given.worse === 'above') ? [a, b] : [b, a];
      expect(ORDER[verdictOf(worse, given)]).toBeGreaterThanOrEqual(ORDER[verdictOf(better, given)]);
    }),
  );
});

test('the sentence names the limit that was crossed, and advice only then', () => {
  const finding = {
    id: 'x',
    unit: '%',
    limits: { worse: 'above', watch: 25, stop: 30 } as const,
    shown: (v: number) => `${v} %`,
    says: 'P1 is wide',
    advice: 'Take a thinner one.',
    evidence: [],
  };
  expect(judged({ ...finding, value: 20 }).because).toBe('P1 is wide.');
  expect(judged({ ...finding, value: 26 }).because).toBe('P1 is wide (watch over 25 %). Take a thinner one.');
  expect(judged({ ...finding, value: 31 }).because).toBe('P1 is wide (stop over 30 %). Take a thinner one.');
});
