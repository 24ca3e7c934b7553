import { applyEvent, checkEvent, emptyCase, type FilmState, SCHEMA_VERSION } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { HARE_OPENED } from '../../sync/hare-opened.ts';
import type { NewEvent } from '../../sync/new-event.ts';
import { calibrationOf } from './calibration-draft.ts';
import { settle } from './settle.ts';
import { nextTarget, withMark } from './target.ts';
import { readUnfinished, type Unfinished, workingOf } from './working.ts';

const HEAD = { schema: SCHEMA_VERSION, caseId: 'case-0001', at: '2026-11-24T22:41:00Z', by: 'test' };
const added: NewEvent = {
  kind: 'film-added',
  payload: {
    filmId: 'film-0001',
    sha256: 'a'.repeat(64),
    fileName: 'a.dcm',
    byteLength: 9,
    rows: 700,
    cols: 500,
    view: 'craniocaudal',
    takenAt: null,
  },
};

/** The film as the record has it after these entries: every one is checked as the server would. */
function filmAfter(...events: readonly NewEvent[]): FilmState {
  const state = [HARE_OPENED, added, ...events]
    .map((event, i) => checkEvent({ ...event, ...HEAD, id: `event-00${i}`, seq: i + 1 }))
    .reduce(applyEvent, emptyCase(''));
  return state.films[0]!;
}

const four: Unfinished = {
  clicks: [
    [301, 342],
    [304, 455],
    [301, 479],
    [281, 604],
  ],
};

test('three clicks of four are recorded by nobody and forgotten by nobody', () => {
  const three: Unfinished = { clicks: [[301, 342], [304, 455], [301, 479], null], towards: 'medial' };
  expect(settle(filmAfter(), three)).toEqual({ events: [], unfinished: three });
  expect(
    nextTarget({
      ...workingOf(filmAfter(), three),
      calibration: { ...workingOf(filmAfter(), {}).calibration, near: [1, 1] },
    }),
  ).toBe('click-4');
});

test('four clicks wait until somebody says what the right edge shows', () => {
  expect(settle(filmAfter(), four).events).toEqual([]);
  const { events, unfinished } = settle(filmAfter(), { ...four, towards: 'medial' });
  expect(events).toHaveLength(1);
  expect(unfinished).toEqual({});
  expect(filmAfter(...events).clicks?.value.segments[1]).toEqual({ name: 'distal', from: [301, 479], to: [281, 604] });
});

test('marks put back where the record has them are not recorded twice', () => {
  const { events } = settle(filmAfter(), { ...four, towards: 'medial' });
  expect(settle(filmAfter(...events), { ...four, towards: 'medial' })).toEqual({ events: [], unfinished: {} });
});

test('a side that the view cannot show counts as not said', () => {
  expect(workingOf(filmAfter(), { towards: 'cranial' }).towards).toBeNull();
});

test('a ball is recorded when its size is a number and its place is clicked', () => {
  const film = filmAfter();
  const typed: Unfinished = { calibration: { ...workingOf(film, {}).calibration, diameterMm: '5,0' } };
  expect(settle(film, typed).events).toEqual([]);
  const { events } = settle(film, withMark(workingOf(film, typed), typed, 'ball', [123, 336]));
  expect(events).toEqual([
    {
      kind: 'film-calibrated',
      payload: { filmId: 'film-0001', calibration: { kind: 'ball', diameterMm: 5, near: [123, 336] } },
    },
  ]);
});

test('an implant is recorded by its diameter and both its edges, and gives the place back after a reload', () => {
  const film = filmAfter();
  const typed: Unfinished = { calibration: { ...workingOf(film, {}).calibration, kind: 'implant', diameterMm: '1.2' } };
  const one = withMark(workingOf(film, typed), typed, 'implant-1', [100, 200]);
  expect(settle(film, one).events).toEqual([]);
  expect(nextTarget(workingOf(film, one))).toBe('implant-2');
  const { events } = settle(film, withMark(workingOf(film, one), one, 'implant-2', [112, 200]));
  const line = [
    [100, 200],
    [112, 200],
  ];
  expect(filmAfter(...events).calibration?.value).toEqual({ kind: 'implant', diameterMm: 1.2, across: line });
  expect(workingOf(filmAfter(...events), {}).calibration.across).toEqual(line);
});

test('a source nearer than the bone is no geometry', () => {
  const draft = {
    ...workingOf(filmAfter(), {}).calibration,
    kind: 'geometry' as const,
    detectorPitchMm: '0.1',
    objectToDetectorMm: '20',
  };
  expect(calibrationOf({ ...draft, sourceToDetectorMm: '15' })).toBeNull();
  expect(calibrationOf({ ...draft, sourceToDetectorMm: '1000' })).toEqual({
    kind: 'geometry',
    sourceToDetectorMm: 1000,
    objectToDetectorMm: 20,
    detectorPitchMm: 0.1,
  });
});

test('what was kept of unfinished marks survives a reload, damage does not', () => {
  const kept: Unfinished = { clicks: [[1, 2], null, null, null], fracture: [[3, 4], null] };
  expect(readUnfinished(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  expect(readUnfinished({ clicks: [[1, 2]], towards: 'up', ends: 7 })).toEqual({});
});
