import type { CaseState } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { wokeAt } from './woke.ts';

type Marks = CaseState['chart']['marks'];
const marks = (...said: readonly (readonly [Marks[number]['value']['mark'], string])[]): Pick<CaseState, 'chart'> => ({
  chart: {
    ...{ readings: [], blood: [], fluids: [], fluidPlan: null, feedPlan: null, checks: [] },
    marks: said.map(([mark, at], i) => ({ value: { mark, at, words: '' }, seq: i + 1, at, by: 'A' })),
  },
});

test('the watch begins with the first sign of waking, and anew with the next anaesthetic', () => {
  expect(wokeAt(marks(['induction', '2026-11-25T20:00:00Z']))).toBeNull();
  const first = [
    ['induction', '2026-11-25T20:00:00Z'],
    ['vaporiser off', '2026-11-25T21:00:00Z'],
    ['tube out', '2026-11-25T21:06:00Z'],
  ] as const;
  expect(wokeAt(marks(...first))).toBe('2026-11-25T21:00:00Z');
  expect(wokeAt(marks(...first, ['induction', '2026-12-05T09:00:00Z']))).toBeNull();
});
