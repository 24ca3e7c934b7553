import { checkEvent, foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import { CASE_PAPERS } from '../case-papers.ts';

const AT = '2026-11-25T21:00:00Z';
const factsOf = (...said: readonly (readonly [string, object])[]) => ({
  state: foldCase(
    [
      [
        'case-opened',
        {
          ...{ number: '26-050', species: 'rabbit', name: '', massG: 1620, weighedAt: AT, ageClass: 'adult' },
          ...{ sex: 'female', bone: 'femur', side: 'left' },
        },
      ] as const,
      ...said,
    ].map(([kind, payload], i) =>
      checkEvent({
        schema: 1,
        id: `event-${i}-chart`,
        caseId: 'case-0001',
        seq: i + 1,
        at: AT,
        by: 'A',
        kind,
        payload,
      }),
    ),
  ),
  made: new Date(AT),
  minutesEastOfUtc: 0,
  version: '0',
});
const reading = (minute: string, heartPerMin: number | null) =>
  [
    'reading-taken',
    {
      ...{ readingId: `reading-${minute}`, at: `2026-11-25T21:${minute}:00Z`, heartPerMin, breathsPerMin: null },
      ...{ spo2Percent: 97, co2MmHg: null, temperatureC: null, vaporiserPercent: 2, oxygenLPerMin: 1, note: '' },
    },
  ] as const;

test('no chart where nothing was charted', async () => {
  await expect(CASE_PAPERS.chart(factsOf())).rejects.toThrow(InputError);
});

test('an hour of readings, one of them without a heart rate, comes out as a PDF', async () => {
  const readings = Array.from({ length: 12 }, (_, i) => reading(`${10 + i * 4}`, i === 3 ? null : 200 + i));
  const pdf = await CASE_PAPERS.chart(factsOf(...readings, ['blood-lost', { at: AT, ml: 3, swabs: null }]));
  expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe('%PDF-');
});
