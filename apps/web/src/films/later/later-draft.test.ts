import type { FilmState } from '@bonewright/casebook';
import { describe, expect, test } from 'vitest';
import { matchesOf, readPoints, recordedPoints } from './later-draft.ts';

const LANDMARKS = [
  { id: 'proximal-end', words: '', at: [0, 0] },
  { id: 'distal-end', words: '', at: [50, 0] },
  { id: 'fracture', words: '', at: [25, 0.5] },
  { id: 'P1-tip', words: '', at: [10, -3] },
] as const;
const signed = { seq: 1, at: '2026-11-25T10:00:00Z', by: 'R. Fenn' };

function filmWith(matches: readonly { plan: readonly [number, number]; film: readonly [number, number] }[]): FilmState {
  const file = { filmId: 'film-0001', sha256: '', fileName: 'a.dcm', byteLength: 1, rows: 1, cols: 1 };
  return {
    filmId: 'film-0001',
    file: { ...signed, value: { ...file, view: null, takenAt: null } },
    view: { ...signed, value: null },
    calibration: null,
    clicks: null,
    trace: null,
    fractureLine: null,
    placing: { ...signed, value: { matches } },
  };
}

describe('the three points', () => {
  test('are the recorded ones while the plan still has them', () => {
    const film = filmWith([
      { plan: [50, 0], film: [5, 6] },
      { plan: [0, 0], film: [1, 2] },
      { plan: [10, -3], film: [3, 4] },
    ]);
    expect(recordedPoints(film, LANDMARKS).map((p) => p.landmark)).toEqual(['distal-end', 'proximal-end', 'P1-tip']);
  });
  test('begin anew where the plan was changed under them', () => {
    const film = filmWith([{ plan: [51, 0], film: [5, 6] }]);
    expect(recordedPoints(film, LANDMARKS).map((p) => [p.landmark, p.at])).toEqual([
      ['proximal-end', null],
      ['distal-end', null],
      ['fracture', null],
    ]);
  });
  test('match nothing until all are placed, each at a landmark of its own', () => {
    const [a, b, c] = [
      { landmark: 'proximal-end', at: [1, 2] },
      { landmark: 'distal-end', at: [3, 4] },
      { landmark: 'fracture', at: null },
    ] as const;
    expect(matchesOf([a, b, c], LANDMARKS)).toBeNull();
    expect(matchesOf([a, b, { ...b }], LANDMARKS)).toBeNull();
    expect(matchesOf([a, b, { ...c, at: [5, 6] }], LANDMARKS)).toHaveLength(3);
  });
  test('whatever else was kept is nothing', () => {
    for (const kept of [null, 3, [], [1, 2, 3], [{ landmark: 1, at: null }, {}, {}]])
      expect(readPoints(kept)).toBeNull();
    const kept = [0, 1, 2].map((i) => ({ landmark: `l${i}`, at: i === 0 ? null : [i, i] }));
    expect(readPoints(kept)).toEqual(kept);
  });
});
