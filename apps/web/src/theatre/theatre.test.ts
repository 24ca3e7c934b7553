import { type CaseState, emptyCase } from '@bonewright/casebook';
import type { InTheatre, PlacedPin } from '@bonewright/construct';
import { describe, expect, test } from 'vitest';
import { atDistance, distanceOf, type EntryDraft, landmarksFor, readDraft } from './entry-draft.ts';
import { firstToDo, inTheatreOf, isOtherPlan, withPlaced } from './in-theatre.ts';
import { minutesSince } from './use-now.ts';
import { withPinIn } from './with-pin-in.ts';

const LENGTH_MM = 52;
const at = (pin: number, sMm: number): PlacedPin => ({ pin, sMm, aboutDeg: 0, tiltDeg: 0, cortices: 2 });
const theatre: InTheatre = { placed: [at(1, 9), at(4, 45)], refused: [], leftOut: [] };
const draft: EntryDraft = { ...at(2, 20), from: 'proximal end' };
const signed = <T>(value: T, seq: number) => ({ value, seq, at: '2026-11-25T23:10:00Z', by: 'R. Fenn' });

describe('one place, read from whatever landmark is at hand', () => {
  test.each([
    ['proximal end', 20],
    ['distal end', 32],
    ['P1', 11],
    ['P4', 25],
  ])('from %s it is %s mm', (from, mm) => {
    expect(distanceOf({ ...draft, from }, theatre, LENGTH_MM)).toBeCloseTo(mm, 9);
    expect(atDistance({ ...draft, from }, theatre, LENGTH_MM, mm + 2).sMm).toBeCloseTo(
      from === 'distal end' || from === 'P4' ? 18 : 22,
      9,
    );
  });

  test('landmarks are the ends and the pins that stand, never the pin itself', () => {
    expect(landmarksFor(theatre, 2, 20)).toEqual(['proximal end', 'distal end', 'P1', 'P4']);
    expect(landmarksFor(theatre, 4, 45)).toEqual(['proximal end', 'distal end', 'P1']);
  });

  test('a distance that is off the bone changes nothing', () => {
    expect(atDistance(draft, theatre, LENGTH_MM, 60)).toEqual(draft);
    expect(atDistance(draft, theatre, LENGTH_MM, -1)).toEqual(draft);
  });
});

test('a half-typed entry comes back after a reload; anything else is none', () => {
  expect(readDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  for (const kept of [null, 'x', {}, { ...draft, cortices: 3 }, { ...draft, sMm: null }])
    expect(readDraft(kept)).toBeNull();
});

describe('what the record says of the pins', () => {
  const tried = { ...signed({ pin: 2, why: 'skids', triedMm: 20 }, 12) };
  const state: Pick<CaseState, 'theatre' | 'construct'> = {
    construct: null,
    theatre: {
      ...emptyCase('').theatre,
      pins: [
        { pin: 1, placed: signed(at(1, 9), 11), tried: [], leftOut: null },
        { pin: 2, placed: null, tried: [tried], leftOut: null },
        { pin: 3, placed: null, tried: [], leftOut: signed({ pin: 3, why: 'no room', triedMm: null }, 13) },
      ],
    },
  };

  test('placed, refused and left out, and which is the next to do', () => {
    const known = inTheatreOf(state, 4);
    expect(known).toEqual({ placed: [at(1, 9)], refused: [{ pin: 2, sMm: 20 }], leftOut: [3] });
    expect(firstToDo(known, 4)).toBe(2);
    expect(firstToDo(withPlaced(known, at(2, 22)), 4)).toBe(4);
    expect(firstToDo(withPlaced(withPlaced(known, at(2, 22)), at(4, 45)), 4)).toBeNull();
  });

  test('a place that refused no longer counts once the pin is in', () => {
    expect(withPlaced(inTheatreOf(state, 4), at(2, 22)).refused).toEqual([]);
  });

  test('pins that the plan does not have are left aside', () => {
    expect(inTheatreOf(state, 2).leftOut).toEqual([]);
  });

  test('a plan chosen after a pin went in is another plan', () => {
    const construct = { pins: [], column: { drawerId: 'putty 6', clearanceMm: 4 }, grip: 'usual' as const };
    const chosen = (seq: number) => signed({ construct, summary: null }, seq);
    expect(isOtherPlan({ ...state, construct: chosen(5) })).toBe(false);
    expect(isOtherPlan({ ...state, construct: chosen(20) })).toBe(true);
  });
});

test('a pin that was left out is shown where the plan had it, between its neighbours', () => {
  const column = { drawerId: 'putty 6', clearanceMm: 4 };
  const pins = [9, 20, 33, 45].map((sMm) => ({ drawerId: 'wire 0.8', sMm, tiltDeg: 0, aboutDeg: 0 }));
  const planned = { im: null, pins, column, grip: 'usual' as const };
  const standing = { construct: { ...planned, pins: pins.filter((_, i) => i !== 2) }, numbers: [1, 2, 4] };
  const shown = withPinIn(standing, planned, theatre, 3, 34);
  expect(shown.construct.pins.map(({ sMm }) => sMm)).toEqual([9, 20, 34, 45]);
  expect(shown).toMatchObject({ numbers: [1, 2, 3, 4], index: 2, inAlready: [0, 3] });
});

test('minutes follow the record, not the page, and never run backwards', () => {
  const now = Date.parse('2026-11-25T23:20:59Z');
  expect(minutesSince('2026-11-25T23:10:00Z', now)).toBe(10);
  expect(minutesSince('2026-11-25T23:30:00Z', now)).toBe(0);
});
