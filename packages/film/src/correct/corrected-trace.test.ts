import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pixel, Trace } from '../model/trace.ts';
import { coordinatesOf, lineFrame, pointAt } from '../trace/frame.ts';
import { correctedTrace } from './corrected-trace.ts';
import type { Correction, WallSide } from './correction.ts';
import { DRAWN, drawnTrace } from './drawn-trace.ts';

const CLICK_PX = 1 / Math.sqrt(12);
const MM = DRAWN.mmPerPixel;
const traced = drawnTrace(DRAWN);

/** The wall of the proximal fragment moved outwards (right) or inwards by so many pixels. */
function dragged(trace: Trace, sMm: number, side: WallSide, byPx: number): Correction {
  const segment = trace.segments[0]!;
  const frame = lineFrame(segment.axis.from, segment.axis.to);
  const station = segment.stations.find((s) => Math.abs(s.sMm - sMm) < 0.01)!;
  const wall = station.walls[side.startsWith('outer') ? 'outer' : 'canal']![side.endsWith('left') ? 0 : 1];
  const [s, x] = coordinatesOf(frame, wall);
  return { segment: 'proximal', sMm, side, place: pointAt(frame, s, x + byPx) };
}

const outerOf = (trace: Trace) => trace.segments[0]!.stations.map((s) => s.outerMm.value);
const station = (trace: Trace, sMm: number) => trace.segments[0]!.stations.find((s) => Math.abs(s.sMm - sMm) < 0.01)!;

describe('an edge dragged', () => {
  const now = correctedTrace(traced, [dragged(traced, 10, 'outer-right', 6)]);

  test('is where the user put it, and the diameter follows', () => {
    expect(station(now, 10).outerMm.value).toBeCloseTo(3 + 6 * MM, 8);
    // half the pair is the click, half the trace: sd / sqrt(2) each
    const sd = Math.hypot(CLICK_PX * MM, DRAWN.sdMm / Math.SQRT2);
    // the click's sd stands in the evidence with three digits
    expect(Math.abs(station(now, 10).outerMm.sd! - sd)).toBeLessThan(1e-4);
  });

  test('takes its neighbours along, less and less, and none beyond one bone width', () => {
    const widths = now.segments[0]!.stations.filter((s) => s.sMm >= 10).map((s) => s.outerMm.value!);
    const falling = widths.filter((w) => w > 3 + 1e-12);
    expect(falling.length).toBeGreaterThan(3);
    for (const [i, w] of widths.entries()) if (i > 0) expect(w).toBeLessThanOrEqual(widths[i - 1]!);
    for (const s of now.segments[0]!.stations) if (Math.abs(s.sMm - 10) >= 3) expect(s.outerMm.value).toBe(3);
  });

  test('leaves the other wall, the canal and the other fragment alone', () => {
    for (const [i, s] of now.segments[0]!.stations.entries()) {
      const before = traced.segments[0]!.stations[i]!;
      expect(s.canalMm.value).toBeCloseTo(before.canalMm.value!, 12);
      expect(s.walls.outer![0][0]).toBeCloseTo(before.walls.outer![0][0], 9);
    }
    expect(now.segments[1]).toBe(traced.segments[1]);
  });

  test('neighbours half-way are less sure than the trace or the hand alone', () => {
    expect(station(now, 11).outerMm.sd!).toBeGreaterThan(station(now, 10).outerMm.sd!);
    expect(station(now, 11).outerMm.sd!).toBeGreaterThan(DRAWN.sdMm);
  });

  test('moves the axis and with it the angulation', () => {
    const far = correctedTrace(traced, [dragged(traced, 20, 'outer-right', 20), dragged(traced, 20, 'outer-left', 20)]);
    // the proximal end of the line goes to the +across side: the distal fragment bends back from it
    expect(far.angulationDeg.value!).toBeLessThan(-0.1);
    expect(far.angulationDeg.sd!).toBeGreaterThan(traced.angulationDeg.sd!);
    expect(far.translationMm.value!).toBeLessThan(-0.05);
  });
});

test('both edges moved alike all along shift the axis by just that, without a bend', () => {
  const all = traced.segments[0]!.stations.flatMap((s) => [
    dragged(traced, s.sMm, 'outer-left', 4),
    dragged(traced, s.sMm, 'outer-right', 4),
  ]);
  const now = correctedTrace(traced, all);
  // the kernel's ridge of 1e-9 is all that stands between the two
  expect(now.translationMm.value).toBeCloseTo(-4 * MM, 6);
  expect(now.angulationDeg.value).toBeCloseTo(0, 6);
});

describe('properties', () => {
  const edit = fc
    .record({
      at: fc.integer({ min: 0, max: 40 }),
      side: fc.constantFrom<WallSide>('outer-left', 'outer-right', 'canal-left', 'canal-right'),
      byPx: fc.double({ min: -5, max: 5, noNaN: true }),
    })
    .map((e) => dragged(traced, e.at / 2, e.side, e.byPx));
  const edits = fc.uniqueArray(edit, { maxLength: 8, selector: (e) => ('side' in e ? `${e.side} ${e.sMm}` : '') });

  test('every edge placed is met to a hundredth of a pixel, whatever else was placed', () => {
    fc.assert(
      fc.property(edits, (list) => {
        const now = correctedTrace(traced, list);
        const frame = lineFrame(traced.segments[0]!.axis.from, traced.segments[0]!.axis.to);
        for (const c of list) {
          if (!('side' in c)) continue;
          const s = station(now, c.sMm);
          const pair = s.walls[c.side.startsWith('outer') ? 'outer' : 'canal'];
          const edge = pair![c.side.endsWith('left') ? 0 : 1];
          expect(Math.abs(coordinatesOf(frame, edge)[1] - coordinatesOf(frame, c.place)[1])).toBeLessThan(0.01);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('dropping a correction undoes it, and their order does not count', () => {
    fc.assert(
      fc.property(edits, (list) => {
        expect(correctedTrace(traced, [])).toBe(traced);
        const forth = outerOf(correctedTrace(traced, list));
        const back = outerOf(correctedTrace(traced, [...list].reverse()));
        for (const [i, w] of forth.entries()) expect(w).toBeCloseTo(back[i]!, 6);
      }),
      { numRuns: 30 },
    );
  });
});

test('a station left out says so, and its neighbours keep their values', () => {
  const now = correctedTrace(traced, [{ segment: 'proximal', sMm: 10, exclude: true }]);
  expect(station(now, 10)).toMatchObject({ outerMm: { value: null, why: 'left out by hand' }, walls: { outer: null } });
  expect(station(now, 10.5).outerMm.value).toBe(3);
  expect(now.segments[0]!.notes.join()).toContain('10.0 mm: left out by hand');
});

describe('where the trace read nothing', () => {
  const why = { value: null, sd: null, why: 'metal lies over the bone here' };
  const blank: Trace = {
    ...traced,
    segments: [
      {
        ...traced.segments[0]!,
        stations: traced.segments[0]!.stations.map((s) =>
          s.sMm === 10 ? { ...s, outerMm: why, canalMm: why, walls: { outer: null, canal: null } } : s,
        ),
      },
      traced.segments[1]!,
    ],
  };
  const one = dragged(traced, 10, 'outer-left', -1);
  test('two edges placed by hand give a diameter with the sd of two clicks', () => {
    const now = correctedTrace(blank, [one, dragged(traced, 10, 'outer-right', 1)]);
    expect(station(now, 10).outerMm.value).toBeCloseTo(3 + 2 * MM, 9);
    expect(Math.abs(station(now, 10).outerMm.sd! - Math.SQRT2 * CLICK_PX * MM)).toBeLessThan(1e-4);
  });
  test('one edge alone does not', () => {
    expect(station(correctedTrace(blank, [one]), 10).outerMm.why).toMatch(/other/);
  });
});

describe('what cannot be', () => {
  test('edges that cross are no diameter', () => {
    const now = correctedTrace(traced, [dragged(traced, 10, 'outer-left', 70)]);
    expect(station(now, 10).outerMm).toMatchObject({ value: null, why: 'the edges placed by hand cross' });
  });
  test('a canal outside its wall is no canal', () => {
    const now = correctedTrace(traced, [dragged(traced, 10, 'canal-right', 40)]);
    expect(station(now, 10).canalMm.why).toMatch(/inside the wall/);
    expect(station(now, 10).outerMm.value).toBe(3);
  });
  test('a fragment that does not exist is refused by name', () => {
    const place: Pixel = [0, 0];
    expect(() => correctedTrace(traced, [{ segment: 'middle', sMm: 1, side: 'outer-left', place }])).toThrow(
      InputError,
    );
  });
});
