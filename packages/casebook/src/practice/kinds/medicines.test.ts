import { registerRows } from '@bonewright/ward';
import { expect, test } from 'vitest';
import { foldPractice } from '../fold.ts';
import { practiceSentenceOf } from '../story.ts';
import { record } from '../test/record.ts';

const choice = {
  choiceId: 'choice-one',
  drug: 'buprenorphine',
  species: 'hedgehog',
  route: 'SC',
  use: 'pain relief',
  low: 0.02,
  high: 0.05,
  unit: 'mg',
  everyHours: 8,
  figureIds: [],
  reason: '',
} as const;
const entry = {
  entryId: 'entry-0001',
  kind: 'received',
  drug: 'ketamine',
  perMl: 100,
  unit: 'mg',
  form: 'vial',
  at: '2026-11-25T23:00:00Z',
  ml: 10,
  corrects: null,
  party: 'wholesaler',
  caseId: null,
  witness: null,
  note: '',
} as const;

test('a choice carries who signed it; signed anew it takes the place of the first; withdrawn it is gone', () => {
  const chosen = ['formulary-chosen', choice] as const;
  const wider = ['formulary-chosen', { ...choice, high: 0.06, reason: 'severe pain' }] as const;
  const { formulary } = foldPractice(record(chosen, wider)).medicines;
  expect(formulary).toMatchObject([{ by: 'T. Okafor', seq: 2, value: { high: 0.06 } }]);
  const withdrawn = ['formulary-withdrawn', { choiceId: 'choice-one', because: 'new evidence' }] as const;
  expect(foldPractice(record(chosen, withdrawn)).medicines.formulary).toEqual([]);
  expect(foldPractice(record(withdrawn)).setAside).toHaveLength(1);
  expect(practiceSentenceOf(record(wider)[0]!)).toBe(
    'Formulary: buprenorphine 0.02-0.06 mg/kg SC for a hedgehog. Because: severe pain',
  );
});

test('an entry of the register cannot be written over: the same id again is set aside', () => {
  const over = ['controlled-drug-entered', { ...entry, ml: 1 }] as const;
  const { medicines, setAside } = foldPractice(record(['controlled-drug-entered', entry], over));
  expect(setAside[0]?.because).toContain('a correction is an entry of its own');
  expect(registerRows(medicines.register, 0)).toMatchObject([{ drug: 'ketamine', balanceMl: 10 }]);
});
