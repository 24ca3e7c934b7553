import { expect, test } from 'vitest';
import { checkEvent } from './events.ts';
import { weightSeries } from './weight-series.ts';

const day = (n: number): string => `2026-11-${String(n).padStart(2, '0')}T08:00:00Z`;
const events = (...said: readonly (readonly [kind: string, payload: object])[]) =>
  said.map(([kind, payload], i) =>
    checkEvent({
      schema: 1,
      id: `event-${i}-mass`,
      caseId: 'case-0001',
      seq: i + 1,
      at: day(1),
      by: 'A',
      kind,
      payload,
    }),
  );
const patient = {
  number: '1',
  species: 'hedgehog',
  name: '',
  ageClass: 'adult',
  sex: 'female',
  bone: 'femur',
  side: 'left',
};
const weighed = (n: number, massG: number, withFrame: boolean) =>
  ['weighed', { at: day(n), massG, withFrame, scale: '' }] as const;

test('800 g at admission, 760 g later is 5 % less; with a frame on there is no change to name', () => {
  const series = weightSeries(
    events(
      ['case-opened', { ...patient, massG: 800, weighedAt: day(1) }],
      weighed(9, 760, false),
      weighed(4, 830, true),
    ),
  );
  expect(series.map(({ massG, changePercent }) => [massG, changePercent])).toEqual([
    [800, 0],
    [830, null],
    [760, -5],
  ]);
});

test('what was never weighed has no series, and the first weight is its own beginning', () => {
  const opened = ['case-opened', { ...patient, massG: null, weighedAt: null }] as const;
  expect(weightSeries(events(opened))).toEqual([]);
  expect(weightSeries(events(opened, weighed(2, 500, false)))).toMatchObject([{ massG: 500, changePercent: 0 }]);
});
