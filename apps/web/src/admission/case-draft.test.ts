import { expect, test } from 'vitest';
import { type CaseDraft, faultsOf, openingOf, readCaseDraft } from './case-draft.ts';

const full: CaseDraft = {
  ...readCaseDraft(null),
  species: ' red squirrel ',
  mass: '310,5',
  weighedAt: '2026-11-24T22:41',
  bone: 'tibia',
  side: 'left',
};

test('an empty form names the three things it cannot do without, and not the mass', () => {
  expect(Object.keys(faultsOf(readCaseDraft(null))).sort()).toEqual(['bone', 'side', 'species']);
});

test('a whole form opens a case under the next free number', () => {
  const opening = openingOf(full, '26-042');
  expect(opening?.payload).toMatchObject({ number: '26-042', species: 'red squirrel', massG: 310.5, side: 'left' });
});

test('a mass in words is quoted back and opens nothing', () => {
  const wrong = { ...full, mass: 'about 300' };
  expect(faultsOf(wrong).mass).toContain('"about 300"');
  expect(openingOf(wrong, '26-042')).toBeNull();
});

test('a patient that was not weighed has no time of weighing', () => {
  expect(openingOf({ ...full, mass: '' }, '26-042')?.payload).toMatchObject({ massG: null, weighedAt: null });
});

test('what was kept of an older or damaged form never breaks the new one', () => {
  expect(readCaseDraft({ species: 'hare', side: 'both', sex: 7, gone: 'x' })).toEqual({
    ...readCaseDraft(null),
    species: 'hare',
  });
});
