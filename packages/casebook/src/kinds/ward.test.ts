/** Admission, chart, care and the course to release: what stands after which events. */
import { describe, expect, test } from 'vitest';
import { type CaseEvent, checkEvent } from '../events.ts';
import { foldCase } from '../fold.ts';
import { latestMass } from '../latest-mass.ts';
import { sentenceOf } from '../story.ts';

const AT = '2026-11-25T21:00:00Z';
const opened = [
  'case-opened',
  {
    number: '26-050',
    species: 'hedgehog',
    name: '',
    massG: 820,
    weighedAt: AT,
    ageClass: 'adult',
    sex: 'female',
    bone: 'femur',
    side: 'left',
  },
] as const;

type Said = readonly [kind: string, payload: object];
const record = (...said: readonly Said[]): CaseEvent[] =>
  said.map(([kind, payload], i) =>
    checkEvent({
      schema: 1,
      id: `event-${i}-of-ward`,
      caseId: 'case-0001',
      seq: i + 1,
      at: AT,
      by: 'Ida Fenn',
      kind,
      payload,
    }),
  );
const stateOf = (...said: readonly Said[]) => foldCase(record(opened, ...said));

const reading = (readingId: string, at: string, heartPerMin: number): Said => [
  'reading-taken',
  {
    readingId,
    at,
    heartPerMin,
    breathsPerMin: null,
    spo2Percent: 96,
    co2MmHg: null,
    temperatureC: 35.1,
    vaporiserPercent: 2,
    oxygenLPerMin: 1,
    note: '',
  },
];
const weight = (massG: number, at: string, withFrame: boolean): Said => [
  'weighed',
  { at, massG, withFrame, scale: 'kitchen scale' },
];

test('admission: what is said later is added, what is not said stays', () => {
  const { admission } = stateOf(
    ['admission-noted', { inMilk: 'not looked', cause: 'a strimmer' }],
    ['admission-noted', { inMilk: 'yes' }],
    ['course-decided', { course: 'operate', decidedBy: 'Ada Marl' }],
  );
  expect(admission.noted?.value).toEqual({ inMilk: 'yes', cause: 'a strimmer' });
  expect(admission.decisions.at(-1)?.value.course).toBe('operate');
});

test('chart: readings stand in the order of their moments; one taken again under its id is corrected', () => {
  const { chart } = stateOf(
    reading('reading-2', '2026-11-25T21:10:00Z', 180),
    reading('reading-1', '2026-11-25T21:05:00Z', 170),
    reading('reading-2', '2026-11-25T21:10:00Z', 188),
  );
  expect(chart.readings.map(({ value }) => value.heartPerMin)).toEqual([170, 188]);
  expect(
    stateOf(reading('reading-1', AT, 170), ['reading-taken-back', { readingId: 'reading-1' }]).chart.readings,
  ).toEqual([]);
});

test('a check that is not done says why', () => {
  const undone = { list: 'before induction', item: 'oxygen-enough', isDone: false, note: '' };
  expect(() => record(opened, ['check-ticked', undone])).toThrow(/says why/);
  const { chart } = stateOf(
    ['check-ticked', { ...undone, note: 'cylinder swapped' }],
    ['check-ticked', { ...undone, isDone: true }],
  );
  expect(chart.checks.map(({ value }) => value.isDone)).toEqual([true]);
});

describe('the mass of the animal itself', () => {
  test('is the newest without the frame', () => {
    const state = stateOf(
      weight(790, '2026-11-27T08:00:00Z', false),
      weight(860, '2026-11-28T08:00:00Z', true),
      weight(700, '2026-11-20T08:00:00Z', false),
    );
    expect(latestMass(state)).toEqual({ massG: 790, at: '2026-11-27T08:00:00Z' });
  });

  test('is that of admission where nobody weighed it since', () => {
    expect(latestMass(stateOf(weight(860, '2026-11-28T08:00:00Z', true)))).toEqual({ massG: 820, at: AT });
  });
});

test('a question is answered once it was asked', () => {
  const asked: Said = ['question-asked', { questionId: 'question-1', at: AT, words: 'May it have straw?' }];
  const answer: Said = ['question-answered', { questionId: 'question-1', words: 'Yes, dry.' }];
  expect(stateOf(asked, answer).care.questions).toMatchObject([{ answered: { value: { words: 'Yes, dry.' } } }]);
  expect(stateOf(answer).setAside).toMatchObject([{ because: 'nobody asked that question' }]);
});

test('union by hand and by film stand apart, and so do the two outcomes', () => {
  const { course } = stateOf(
    ['union-judged', { by: 'hand', isUnited: true, words: 'firm', filmIds: [] }],
    ['union-judged', { by: 'film', isUnited: false, words: 'gap caudally', filmIds: [] }],
    ['bone-outcome', { bone: 'healed', words: '' }],
    ['patient-outcome', { patient: 'released', words: '' }],
  );
  expect([course.union.hand?.value.isUnited, course.union.film?.value.isUnited]).toEqual([true, false]);
  expect([course.bone?.value.bone, course.patient?.value.patient]).toEqual(['healed', 'released']);
});

test('readiness that does not apply says why; the last word on an item stands', () => {
  const item = { item: 'curls-fully', isMet: 'does not apply', words: '' };
  expect(() => record(opened, ['readiness-noted', item])).toThrow(/says why/);
  const { course } = stateOf(
    ['readiness-noted', { ...item, isMet: 'no', words: 'frame still on' }],
    ['readiness-noted', { ...item, isMet: 'yes' }],
  );
  expect(course.readiness.map(({ value }) => value.isMet)).toEqual(['yes']);
});

test('the story tells it in words', () => {
  const said = record(
    opened,
    reading('reading-1', AT, 170),
    weight(860, AT, true),
    ['recheck-set', { on: '2026-12-05', what: 'films', who: 'Ida Fenn' }],
    ['released', { at: AT, place: 'the lane by the mill', isWhereFound: true, with: 'its hay', words: '' }],
  ).map(sentenceOf);
  expect(said.slice(1)).toEqual([
    'Chart read: heart 170, SpO2 96 %, temperature 35.1 °C, vaporiser 2 %, oxygen 1 l/min.',
    'Weighed: 860 g with the frame.',
    'Recheck set for 2026-12-05: films.',
    'Released at the lane by the mill, where it was found.',
  ]);
});
