import { describe, expect, test } from 'vitest';
import schema1 from '../fixtures/schema-1.json' with { type: 'json' };
import { type EventKind, type Payload, type RecordedEvent, readEvent } from './events.ts';
import { filmsBefore, laterFilmSets, occasionOf, operatedAt } from './film-sets.ts';
import { foldCase } from './fold.ts';

const begun: RecordedEvent[] = schema1.map(readEvent);
const caseId = begun[0]!.caseId;

/** The recorded case, and after it what is said here; `at` is when each was written. */
function followed(...said: readonly (readonly [at: string, kind: EventKind, payload: unknown])[]) {
  const events = said.map(([at, kind, payload], i) => {
    const seq = begun.length + 1 + i;
    return readEvent({ schema: 1, id: `later-event-${seq}`, caseId, seq, at, by: 'R. Fenn', kind, payload });
  });
  return foldCase([...begun, ...events]);
}

const film = (n: number, takenAt: string | null, more: Partial<Payload<'film-added'>> = {}) => ({
  filmId: `film-later-${n}`,
  sha256: String(n).repeat(64),
  fileName: `later-${n}.dcm`,
  byteLength: 10,
  rows: 10,
  cols: 10,
  view: 'craniocaudal',
  takenAt,
  ...more,
});
const chosenAt = foldCase(begun).construct!.at;
const daysOn = (days: number, hours = 1) =>
  new Date(Date.parse(chosenAt) + days * 86_400_000 + hours * 3_600_000).toISOString();
const pinIn = { pin: 1, sMm: 10, aboutDeg: 0, tiltDeg: 0, cortices: 2 };

describe('the occasion of a film', () => {
  test('films that the bone was measured on, and older ones, are from before', () => {
    const state = followed([daysOn(1), 'film-added', film(1, '2020-01-01T10:00:00Z')]);
    expect(filmsBefore(state)).toEqual(state.films);
    expect(laterFilmSets(state)).toEqual([]);
  });
  test('taken after the plan was chosen it is from theatre, and after the putty was hard from after', () => {
    const state = followed(
      [daysOn(0, 1), 'pin-placed', pinIn],
      [daysOn(0, 2), 'film-added', film(1, daysOn(0, 2))],
      [daysOn(0, 3), 'putty-mixed', { grams: 4, at: daysOn(0, 3), workingMinutes: null }],
      [daysOn(0, 4), 'putty-hard', { at: daysOn(0, 4) }],
      [daysOn(0, 5), 'film-added', film(2, daysOn(0, 5))],
      [daysOn(14), 'film-added', film(3, daysOn(14))],
    );
    expect(state.films.slice(-3).map((f) => occasionOf(state, f))).toEqual(['in theatre', 'after', 'recheck']);
    expect(operatedAt(state)).toBe(daysOn(0, 1));
  });
  test('what is said by hand goes before what the file and the dates say', () => {
    const state = followed(
      [daysOn(1), 'film-added', film(1, '2020-01-01T10:00:00Z', { occasion: 'after' })],
      [daysOn(1), 'film-occasion-set', { filmId: 'film-later-1', occasion: 'recheck' }],
    );
    expect(occasionOf(state, state.films.at(-1)!)).toBe('recheck');
  });
});

test('later films stand in sets of one day, the newest of each view first choice', () => {
  const state = followed(
    [daysOn(0), 'pin-placed', pinIn],
    [daysOn(21), 'film-added', film(3, daysOn(21), { occasion: 'recheck', view: 'mediolateral' })],
    [daysOn(21), 'film-added', film(1, daysOn(7), { occasion: 'recheck' })],
    [daysOn(21), 'film-added', film(2, daysOn(7, 2), { occasion: 'recheck' })],
  );
  const sets = laterFilmSets(state);
  expect(sets.map((s) => [s.occasion, s.day])).toEqual([
    ['recheck', 7],
    ['recheck', 21],
  ]);
  expect(sets[0]).toMatchObject({ craniocaudal: { filmId: 'film-later-2' }, mediolateral: null });
  expect(sets[0]!.others.map((f) => f.filmId)).toEqual(['film-later-1']);
});

test.each([
  ['2026-02-27T22:00:00Z', '2026-03-01T21:00:00Z', 2],
  ['2024-02-27T22:00:00Z', '2024-03-01T21:00:00Z', 3],
  ['2026-12-30T08:00:00Z', '2027-01-02T07:00:00Z', 3],
  ['2026-03-14T23:30:00Z', '2026-03-15T04:00:00Z', 0],
])('days from %s to %s: %d, over ends of months, leap days and midnight', (began, at, days) => {
  const state = followed([began, 'pin-placed', pinIn], [at, 'film-added', film(1, at, { occasion: 'recheck' })]);
  expect(laterFilmSets(state)[0]!.day).toBe(days);
});
