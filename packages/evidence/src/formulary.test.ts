import { describe, expect, test } from 'vitest';
import { doseFigure, doseFigures, drugOf, drugs, volumeLimits } from './formulary.ts';

describe('published doses', () => {
  test('each id and each drug stands once, and every figure names a known drug', () => {
    for (const list of [doseFigures.map(({ id }) => id), drugs.map(({ id }) => id)])
      expect(list.filter((id, i) => list.indexOf(id) !== i)).toEqual([]);
    for (const { id, drug } of doseFigures) expect(drugOf(drug), id).not.toBeNull();
  });
  test('a conflict points both ways and says what it is', () => {
    for (const { id, conflicts } of doseFigures)
      for (const other of conflicts?.ids ?? []) {
        expect(doseFigure(other)?.conflicts?.ids, `${other} about ${id}`).toContain(id);
        expect(conflicts?.why).not.toBe('');
      }
  });
  test('a figure of another species says so in the words that are shown', () => {
    for (const { id, own, isGeneral, studied, status } of doseFigures)
      if (own.length === 0 && !isGeneral && status === 'seen')
        expect(studied, id).toMatch(/another species|not named|rodents|carnivores|reptiles/);
  });
});

/** Diehl and others 2001, university copies: the rabbit's row, and the unit that changes inside the IM column. */
test.each([
  ['rabbit', 'SC', 1, 2, 'ml/kg'],
  ['rabbit', 'IM', 0.25, 0.5, 'ml/kg'],
  ['rat', 'IM', 0.1, 0.2, 'ml per site'],
  ['mouse', 'IM', 0.05, 0.1, 'ml per site'],
  ['macaque', 'IP', null, 10, 'ml/kg'],
  ['macaque', 'IV', 2, null, 'ml/kg'],
])('volume limit %s %s: %s, at most %s %s', (species, route, recommended, maximum, unit) => {
  expect(volumeLimits.find((l) => l.species === species && l.route === route)).toMatchObject({
    recommended,
    maximum,
    unit,
  });
});
