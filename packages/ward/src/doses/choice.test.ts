import { expect, test } from 'vitest';
import { checkChoice, choiceRemarks, type FormularyChoice, formularyChoiceSchema } from './choice.ts';

const choice: FormularyChoice = {
  choiceId: 'choice-one',
  drug: 'buprenorphine',
  species: 'hedgehog',
  route: 'SC',
  use: 'pain relief',
  low: 0.02,
  high: 0.05,
  unit: 'mg',
  everyHours: 8,
  figureIds: ['dose.hedgehog.buprenorphine'],
  reason: '',
};

test('a choice within its species’ published range is signed without a reason', () => {
  expect(formularyChoiceSchema.parse(choice)).toEqual(choice);
  expect(() => checkChoice(choice)).not.toThrow();
});

test('either end outside asks why, and a reason answers it', () => {
  expect(() => checkChoice({ ...choice, high: 0.5 })).toThrow(/say why/);
  expect(() => checkChoice({ ...choice, low: 0.002 })).toThrow(/say why/);
  expect(() => checkChoice({ ...choice, high: 0.08, reason: 'severe pain, watched' })).not.toThrow();
});

test('a species without figures of its own is told whose they are', () => {
  expect(
    choiceRemarks({ ...choice, species: 'stoat' })
      .map(({ words }) => words)
      .join(' '),
  ).toMatch(/No dose for a stoat.*European hedgehog/);
});

test('a range that runs backwards is not read', () => {
  expect(formularyChoiceSchema.safeParse({ ...choice, low: 1 }).success).toBe(false);
});
