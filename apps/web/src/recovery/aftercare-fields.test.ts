import { checkEvent, foldCase } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { aftercareFields, aftercareOutcome, aftercareValues } from './aftercare-fields.ts';

const state = foldCase([
  checkEvent({
    schema: 1,
    id: 'event-0001',
    caseId: 'case-0001',
    seq: 1,
    at: '2026-11-25T20:00:00Z',
    by: 'A. Marsh',
    kind: 'case-opened',
    payload: {
      number: '26-050',
      species: 'hedgehog',
      name: '',
      massG: 800,
      weighedAt: null,
      ageClass: 'adult',
      sex: 'female',
      bone: 'femur',
      side: 'left',
    },
  }),
]);
const whole = {
  ...aftercareValues(state),
  'what-0': 'Weigh',
  'when-0': 'every morning',
  phone: '01632 960 141',
  recheckOn: '2026-12-05',
};

test('a row more than is filled is always offered; no dose can be named where none is signed', () => {
  const keys = aftercareFields(state, whole).map(({ key }) => key);
  expect(keys).toContain('what-1');
  expect(keys.filter((key) => key.startsWith('dose-'))).toEqual([]);
});

test('a plan without gaps is an entry that the record takes; a dose that is not signed is never in it', () => {
  const said = aftercareOutcome(state, { ...whole, 'dose-0': 'dose-0001' });
  expect(said).toMatchObject({ entries: [{ payload: { tasks: [{ what: 'Weigh', doseId: null }] } }] });
  expect(said).not.toHaveProperty('ask');
});

test('a plan without a number to ring asks for a reason, a task without its time is a fault', () => {
  expect(aftercareOutcome(state, { ...whole, phone: '' })).toMatchObject({ missing: ['No telephone number.'] });
  expect(aftercareOutcome(state, { ...whole, 'when-0': ' ' })).toEqual({ faults: { 'when-0': 'Say when.' } });
});
