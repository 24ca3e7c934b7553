import { expect, test } from 'vitest';
import { lineOf, readDoseDraft } from './dose-draft.ts';

const hedgehog = { species: 'hedgehog', massG: 820, weighedAt: '2026-11-25T08:00:00Z' };
const typed = readDoseDraft({
  drug: ' Medetomidine ',
  use: 'anaesthesia',
  route: 'IM',
  dose: '0,1',
  strength: '1',
  syringe: '1-ml',
});

test('an empty form asks for one thing after the other, and holds no figure', () => {
  const empty = readDoseDraft(null);
  expect([empty.dose, empty.strength, empty.figureId]).toEqual(['', '', '']);
  expect(lineOf(empty, hedgehog).lacks).toBe('Say which drug.');
  expect(lineOf(empty, { ...hedgehog, massG: null }).lacks).toMatch(/not been weighed/);
});

test('what was typed is a line for the mass of the record', () => {
  expect(lineOf(typed, hedgehog).line).toMatchObject({
    drug: 'medetomidine',
    massG: 820,
    dose: { value: 0.1, unit: 'mg/kg' },
    dilution: null,
    syringe: { capacityMl: 1, markMl: 0.01 },
  });
});

test('a dilution says with what, and is whole parts', () => {
  expect(lineOf({ ...typed, parts: '10' }, hedgehog).lacks).toBe('Say what it is diluted with.');
  expect(lineOf({ ...typed, parts: '1', diluent: 'saline' }, hedgehog).lacks).toMatch(/cannot be a dose/);
});

test('what was kept by another version is read as far as it is a draft', () => {
  expect(readDoseDraft({ drug: 7, route: 'SC', other: 'x', reasons: { outside: 'why', bad: 1 } })).toMatchObject({
    drug: '',
    route: 'SC',
    reasons: { outside: 'why' },
  });
});
