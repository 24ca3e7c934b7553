/** A dose from the hand to the animal: what stands, and what is set aside. */
import { type DoseLine, signDose } from '@bonewright/ward';
import { describe, expect, test } from 'vitest';
import { type CaseEvent, checkEvent } from '../events.ts';
import { foldCase } from '../fold.ts';
import { sentenceOf } from '../story.ts';
import { earlierDoses } from './doses.ts';

const line: DoseLine = {
  drug: 'medetomidine',
  use: 'anaesthesia',
  route: 'IM',
  site: '',
  species: 'hedgehog',
  massG: 820,
  weighedAt: '2026-11-25T08:00:00Z',
  dose: { value: 0.1, unit: 'mg/kg' },
  figureId: null,
  strength: { value: 1, unit: 'mg/ml' },
  dilution: null,
  syringe: { capacityMl: 1, markMl: 0.01 },
};
const context = { now: '2026-11-25T21:00:00Z', minutesEastOfUtc: 0, earlier: [] };
const signature = signDose(line, context, { by: 'Ada Marl', reasons: {}, secondPerson: null });
const doseId = 'dose-0001';

const proposed = ['dose-proposed', { doseId, line }] as const;
const signed = ['dose-signed', { doseId, signature }] as const;
const given = ['dose-given', { doseId, at: '2026-11-25T21:10:00Z', note: '' }] as const;
const voided = ['dose-voided', { doseId, because: 'wrong vial' }] as const;

const record = (...said: readonly (readonly [string, object])[]): CaseEvent[] =>
  said.map(([kind, payload], i) =>
    checkEvent({
      schema: 1,
      id: `event-${i}-of-dose`,
      caseId: 'case-0001',
      seq: i + 1,
      at: '2026-11-25T21:00:00Z',
      by: 'Ada Marl',
      kind,
      payload,
    }),
  );
const after = (...said: readonly (readonly [string, object])[]) => foldCase(record(...said));

test('written down, signed, given: each with who and when', () => {
  const { doses, setAside } = after(proposed, signed, given);
  expect(setAside).toEqual([]);
  expect(doses).toMatchObject([{ signed: { by: 'Ada Marl', seq: 2 }, given: { seq: 3 }, voided: null }]);
  expect(earlierDoses(doses)).toEqual([
    { doseId, drug: 'medetomidine', route: 'IM', site: '', amount: 0.08, givenAt: '2026-11-25T21:10:00Z' },
  ]);
});

describe('set aside', () => {
  test.each([
    ['given though no vet signed', [proposed, given], 'no vet signed'],
    ['given though written anew after the signature', [signed, proposed, given], 'no vet signed'],
    ['given twice', [signed, given, given], 'given already'],
    ['signed after it was given', [signed, given, signed], 'given already'],
    ['given after it was voided', [signed, voided, given], 'voided'],
    ['voided though nobody wrote it', [voided], 'no such dose'],
  ] as const)('%s', (_, said, because) => {
    expect(after(...said).setAside.at(-1)?.because).toContain(because);
  });
});

test('a voided dose no longer counts against the next', () => {
  expect(earlierDoses(after(signed, given, voided).doses)).toEqual([]);
  expect(earlierDoses(after(proposed).doses)).toEqual([]);
});

test('a signature over another volume than the line’s is refused at the door', () => {
  expect(() => record(['dose-signed', { doseId, signature: { ...signature, drawnMl: 0.8 } }])).toThrow(
    /volume does not follow/,
  );
});

test('the story tells dose, volume and reasons', () => {
  expect(record(proposed, signed, voided).map(sentenceOf)).toEqual([
    'Dose written down, not signed: medetomidine 0.1 mg/kg IM for 820 g.',
    'Dose signed: medetomidine 0.1 mg/kg IM for 820 g, 0.08 ml.',
    'Dose voided: wrong vial.',
  ]);
});
