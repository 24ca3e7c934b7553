import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkEvent } from './events.ts';
import { askedWords, foundIn, searchLine, wordsOf } from './search-words.ts';

const head = { schema: 1, id: 'event-0001', caseId: 'case-0001', seq: 1, at: '2026-11-25T23:10:00Z', by: 'R. Fenn' };

test.each([
  ['26-041', '26-041'],
  ['26-041', '26041'],
  ['26-041', '041'],
  ['Igel, männlich', 'mannlich'],
  ['Igel, männlich', 'MÄNN'],
  ['José Ñandú', 'jose nandu'],
  ['IM_0001.dcm', 'im_0001'],
  ['IM_0001.dcm', 'dcm'],
  ['found by Mrs O’Hara', "o'hara"],
  ['ﬁbula', 'fibula'],
  ['ΌΡΝΙΣ', 'ορν'],
])('%s is found by %s', (text, question) => {
  const asked = askedWords(question);
  expect(asked.length).toBeGreaterThan(0);
  expect(foundIn(text, asked)).toEqual(asked);
});

test.each([
  ['squirrel', 'quirrel'],
  ['26-041', '26-042'],
  ['tawny owl', 'tawny hare'],
])('%s is not found by %s', (text, question) => {
  const asked = askedWords(question);
  expect(foundIn(text, asked)).not.toEqual(asked);
});

test('words are letters and digits only, whatever is written or asked', () =>
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      for (const word of [...wordsOf(text), ...askedWords(text)]) expect(word).toMatch(/^[\p{L}\p{N}]{1,60}$/u);
      expect(askedWords(text).length).toBeLessThanOrEqual(8);
    }),
  ));

test('a line holds the sentence and what was typed beside it, not keys and hashes', () => {
  const patient = {
    species: 'tawny owl',
    name: 'Bramble',
    massG: 440,
    weighedAt: null,
    ageClass: 'adult',
    sex: 'female',
  };
  const payload = { number: '26-041', ...patient, bone: 'tibiotarsus', side: 'right' };
  expect(searchLine(checkEvent({ ...head, kind: 'case-opened', payload }))).toBe(
    'Case 26-041 opened: tawny owl, 440 g, right tibiotarsus. · Bramble · adult · female',
  );
  const film = { filmId: 'film-0001', sha256: 'a'.repeat(64), fileName: 'IM_1.dcm', byteLength: 9, rows: 1, cols: 1 };
  const added = checkEvent({ ...head, kind: 'film-added', payload: { ...film, view: null, takenAt: null } });
  expect(searchLine(added)).toBe('Film IM_1.dcm added.');
});
