import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import squirrel from '../../cases/squirrel-tibia.json' with { type: 'json' };
import { evaluateNominal } from '../assess.ts';
import { LOADS, type Plan } from '../model/plan.ts';
import { readCase } from '../read-case.ts';
import { worstMargin } from '../search/worth.ts';
import { asPlaced, findPin, inPlanNumbers, type PlacedPin, placeFrom } from './index.ts';

const patientCase = readCase({ ...squirrel, construct: undefined });
const at = (sMm: number) => ({ drawerId: patientCase.drawer.pins[1]!.id, sMm, tiltDeg: 0, aboutDeg: 0 });
const planned = {
  im: null,
  pins: [7, 20, 36, 48].map(at),
  column: { drawerId: patientCase.drawer.columns[0]!.id, clearanceMm: 4 },
  grip: 'usual' as const,
};
const NOTHING = { placed: [], refused: [], leftOut: [] };
const placedAt = (pin: number, sMm: number): PlacedPin => ({ pin, sMm, aboutDeg: 0, tiltDeg: 0, cortices: 2 });
const margins = (plan: Plan) => LOADS.map((load) => plan.loads[load].margin.p50);

describe('a pin that went where the plan had it', () => {
  const { construct, remaining, plan } = asPlaced(patientCase, planned, { ...NOTHING, placed: [placedAt(1, 7)] });
  test('the plan stands, every remaining pin stays', () => {
    expect(construct.pins.map(({ sMm }) => sMm)).toEqual([7, 20, 36, 48]);
    expect(remaining.map(({ pin, sMm }) => [pin, sMm])).toEqual([
      [2, 20],
      [3, 36],
      [4, 48],
    ]);
    expect(margins(plan)).toEqual(margins(evaluateNominal(patientCase, planned)));
  });
});

describe('a pin 2 mm off', () => {
  const before = asPlaced(patientCase, planned, { ...NOTHING, placed: [placedAt(1, 7)] });
  const after = asPlaced(patientCase, planned, { ...NOTHING, placed: [placedAt(1, 9)] });

  test('it stays where it is, the margins change and so does the advice for the next pin', () => {
    expect(after.construct.pins[0]!.sMm).toBe(9);
    expect(margins(after.plan)).not.toEqual(margins(before.plan));
    expect(after.remaining[0]!.because).not.toBe(before.remaining[0]!.because);
    expect(after.remaining[0]!.because).toMatch(/from P1 as it stands/);
  });

  test('the margins are those of the construct it hands back, solved anew', () => {
    expect(margins(after.plan)).toEqual(margins(evaluateNominal(patientCase, after.construct)));
  });

  test('what is advised is never worse than leaving the rest as planned', () => {
    const left = { ...planned, pins: planned.pins.map((pin, i) => (i === 0 ? { ...pin, sMm: 9 } : pin)) };
    expect(worstMargin(after.plan)).toBeGreaterThanOrEqual(worstMargin(evaluateNominal(patientCase, left)));
  });
});

test('a pin turned, tilted or short of the far wall is judged as it stands', () => {
  const off = { ...placedAt(2, 20), aboutDeg: 20, tiltDeg: 15, cortices: 1 as const };
  const { construct } = asPlaced(patientCase, planned, { ...NOTHING, placed: [off] });
  expect(construct.pins[1]).toMatchObject({ sMm: 20, aboutDeg: 20, tiltDeg: 15, cortices: 1 });
});

test('a pin in a place that a check stops stays, is said so, and the others are still planned', () => {
  const { construct, plan, remaining } = asPlaced(patientCase, planned, { ...NOTHING, placed: [placedAt(2, 26)] });
  expect(construct.pins[1]!.sMm).toBe(26);
  expect(plan.checks.filter(({ verdict }) => verdict === 'stop').map(({ pin }) => pin)).toContain(2);
  expect(remaining.map(({ pin }) => pin)).toEqual([1, 3, 4]);
});

test('a pin placed beside where the next was planned: the next makes room, and no stop is left', () => {
  const beside = { ...NOTHING, placed: [placedAt(1, 19.6)] };
  const left = { ...planned, pins: planned.pins.map((pin, i) => (i === 0 ? { ...pin, sMm: 19.6 } : pin)) };
  const stops = (plan: Plan) => plan.checks.filter(({ verdict }) => verdict === 'stop').length;
  expect(stops(evaluateNominal(patientCase, left))).toBeGreaterThan(0);
  const { plan, construct } = asPlaced(patientCase, planned, beside);
  expect(stops(plan)).toBe(0);
  expect(Math.abs(construct.pins[1]!.sMm - 19.6)).toBeGreaterThan(1);
});

test('a pin that could not be placed is planned elsewhere in its fragment, clear of the hole', () => {
  const refused = [{ pin: 2, sMm: 20 }];
  const { remaining } = asPlaced(patientCase, planned, { ...NOTHING, placed: [placedAt(1, 7)], refused });
  const { sMm } = remaining.find(({ pin }) => pin === 2)!;
  expect(sMm).not.toBeNull();
  expect(Math.abs(sMm! - 20)).toBeGreaterThan(1);
  expect(sMm!).toBeLessThan(patientCase.fracture.fromMm);
});

describe('a pin left out', () => {
  const { numbers, plan, construct } = asPlaced(patientCase, planned, { ...NOTHING, leftOut: [2] });
  test('is not in the construct, and the others keep their numbers', () => {
    expect(construct.pins).toHaveLength(3);
    expect(numbers).toEqual([1, 3, 4]);
    const named = plan.checks.flatMap(({ because }) => because.match(/\bP\d+/g) ?? []);
    expect(new Set(named)).toEqual(new Set(['P1', 'P3', 'P4']));
  });
  test('one pin alone in a fragment is stopped by the check of that name', () => {
    expect(plan.checks.find(({ id }) => id.startsWith('pins'))?.verdict).toBe('stop');
  });
});

test('sentences keep words that only look like a pin', () => {
  const plan = evaluateNominal(patientCase, planned);
  expect(inPlanNumbers(plan, [1, 2, 3, 4])).toEqual(plan);
});

describe('where a pin stands, measured from a landmark', () => {
  test.each([
    ['proximal end', { from: 'proximal end' } as const, 9, 9],
    ['distal end', { from: 'distal end' } as const, 9, 47],
    ['a pin, going distally', { from: 'pin', atMm: 9, towards: 'distal' } as const, 11.5, 20.5],
    ['a pin, going proximally', { from: 'pin', atMm: 30, towards: 'proximal' } as const, 10, 20],
  ])('%s', (_, landmark, distanceMm, sMm) => {
    expect(placeFrom(56, landmark, distanceMm)).toBeCloseTo(sMm, 9);
  });
  test.each([57, -1, Number.NaN])('%s mm is off the bone', (mm) => {
    expect(() => placeFrom(56, { from: 'proximal end' }, mm)).toThrow(InputError);
  });
});

test('the depth of a square pin is the bone’s width and what stands proud, from the skin the tissue more', () => {
  const { pastNearWallMm, pastSkinMm, landmarks, pilotMm, coreMm } = findPin(patientCase, planned, 1, [0]);
  const { stations } = patientCase.bone;
  const widths = stations.map(({ outerMm }) => outerMm[0]);
  expect(pastNearWallMm).toBeGreaterThan(Math.min(...widths) + 1);
  expect(pastNearWallMm).toBeLessThan(Math.max(...widths) + 1);
  expect(pastSkinMm!).toBeGreaterThan(pastNearWallMm);
  expect(landmarks).toEqual([
    { from: 'proximal end', mm: 20 },
    { from: 'pin', index: 0, mm: 13 },
  ]);
  expect(pilotMm).toBeCloseTo(coreMm - 0.1, 9);
});

describe('refused with the number and the path', () => {
  test.each([
    ['a pin the plan does not have', { placed: [placedAt(5, 30)] }, 'placed.0.pin'],
    ['a pin off the bone', { placed: [placedAt(1, 90)] }, 'placed.0.sMm'],
    ['a pin placed twice', { placed: [placedAt(1, 7), placedAt(1, 8)] }, 'placed.1.pin'],
    ['a pin placed and left out', { placed: [placedAt(1, 7)], leftOut: [1] }, 'placed.0.pin'],
    ['nothing left', { leftOut: [1, 2, 3, 4] }, 'leftOut'],
  ])('%s', (_, wrong, path) => {
    const refused = (() => {
      try {
        return asPlaced(patientCase, planned, { ...NOTHING, ...wrong });
      } catch (error) {
        return error;
      }
    })();
    expect(refused).toBeInstanceOf(InputError);
    expect(refused).toMatchObject({ path });
  });
});
