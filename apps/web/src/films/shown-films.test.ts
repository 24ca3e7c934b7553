import type { FilmState, View } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { shownFilms } from './shown-films.ts';

function film(filmId: string, view: View | null): FilmState {
  const sign = { seq: 1, at: '2026-11-24T22:41:00Z', by: 'test' };
  const file = {
    filmId,
    sha256: 'a'.repeat(64),
    fileName: filmId,
    byteLength: 1,
    rows: 1,
    cols: 1,
    view,
    takenAt: null,
  };
  return {
    filmId,
    file: { value: file, ...sign },
    view: { value: view, ...sign },
    calibration: null,
    clicks: null,
    trace: null,
    fractureLine: null,
  };
}

const ids = (films: readonly FilmState[]): string[] => shownFilms(films).map(({ filmId }) => filmId);

test('craniocaudal lies at the left once both are known, whatever order they came in', () => {
  expect(ids([film('a', 'mediolateral'), film('b', 'craniocaudal')])).toEqual(['b', 'a']);
});

test('a newer film of the same view takes the place of the older', () => {
  expect(ids([film('a', 'craniocaudal'), film('b', 'mediolateral'), film('c', 'craniocaudal')])).toEqual(['c', 'b']);
});

test('a film that nobody named yet stays where it came in, beside the one that is known', () => {
  expect(ids([film('a', null), film('b', 'mediolateral'), film('c', null)])).toEqual(['a', 'b']);
});

test('two films of one view are both to be seen, so that the mistake is', () => {
  expect(ids([film('a', 'craniocaudal'), film('b', 'craniocaudal')])).toEqual(['a', 'b']);
});
