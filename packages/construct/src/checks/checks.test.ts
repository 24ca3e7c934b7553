/** Each rule at its limits, on a straight bone 5 mm wide with a 3 mm canal. Limits: rules of the evidence registry. */
import { entries } from '@bonewright/evidence';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CaseFile } from '../model/case-file.ts';
import { frameFacts } from '../to-frame/masses.ts';
import { checkContext, runChecks } from './index.ts';
import { checkOf, checksOf, FOUR_PINS, STRAIGHT, straightCase, withPin } from './straight-bone.ts';

const WORRY = { good: 0, watch: 1, stop: 2 };
const verdict = (...asked: Parameters<typeof checkOf>) => checkOf(...asked).verdict;

const pinOf = (diameterMm: number): CaseFile['drawer'] => ({
  ...STRAIGHT.drawer,
  pins: [{ id: 'pin', diameterMm, kind: 'smooth', material: 'steel-cold-worked', count: 8 }],
});

test('four square pins in the middle of everything: only their number asks for care', () => {
  const asked = checksOf(FOUR_PINS).filter((check) => check.verdict !== 'good');
  expect(asked.map(({ id }) => id)).toEqual(['pins-proximal', 'pins-distal']);
});

test('every check names known evidence, and no two have one id and pin', () => {
  const known = new Set(entries.map(({ id }) => id));
  const checks = checksOf({ ...FOUR_PINS, im: { drawerId: 'im', tiedIn: true } });
  expect(checks.flatMap(({ evidence }) => evidence).filter((id) => !known.has(id))).toEqual([]);
  expect(new Set(checks.map(({ id, pin }) => `${id} ${pin}`)).size).toBe(checks.length);
});

describe('pin over bone', () => {
  const at = (diameterMm: number, species = 'red squirrel') =>
    verdict('pin-ratio', FOUR_PINS, straightCase({ drawer: pinOf(diameterMm), patient: { species, massG: 310 } }), 1);

  test('25 % good, above watch, 30 % watch, above stop', () => {
    expect([1.25, 1.26, 1.5, 1.51].map((d) => at(d))).toEqual(['good', 'watch', 'watch', 'stop']);
  });

  test('rabbit and bird: above 20 % watch', () => {
    expect([at(1, 'rabbit'), at(1.01, 'rabbit'), at(1.01, 'tawny owl')]).toEqual(['good', 'watch', 'watch']);
  });

  test('an oval bone counts with its width square to the pin', () => {
    const bone = {
      ...STRAIGHT.bone,
      stations: [0, 60].map((sMm) => ({ sMm, outerMm: [6, 4] as [number, number], canalMm: null })),
    };
    const oval = straightCase({ bone });
    expect(checkOf('pin-ratio', FOUR_PINS, oval, 1).value).toBeCloseTo(100 / 4, 9);
    expect(checkOf('pin-ratio', withPin(1, { aboutDeg: 90 }), oval, 1).value).toBeCloseTo(100 / 6, 9);
  });

  test('it says what a colleague would say', () => {
    const { because } = checkOf('pin-ratio', FOUR_PINS, straightCase({ drawer: pinOf(1.3) }), 3);
    expect(because).toBe("P3 is 26 % of the bone's width (watch over 25 %).");
  });
});

describe('places along the bone', () => {
  test('fracture from 29 mm: one width off is good, half a width the least', () => {
    const at = (sMm: number) => verdict('fracture-distance', withPin(2, { sMm }), undefined, 2);
    expect([24, 24.1, 26.5, 26.6, 30].map(at)).toEqual(['good', 'watch', 'watch', 'stop', 'stop']);
  });

  test('a leaning pin is judged at the wall that comes nearer', () => {
    const { value } = checkOf('fracture-distance', withPin(2, { tiltDeg: 45 }), undefined, 2);
    expect(value).toBeCloseTo(29 - 23 - 2.5, 9);
  });

  test('a hole may end at a fissure, no further', () => {
    const fissured = straightCase({ fracture: { ...STRAIGHT.fracture, fissuresMm: [[24, 29]] } });
    const at = (sMm: number) => verdict('fissure-distance', withPin(2, { sMm }), fissured, 2);
    expect([21, 21.1, 23.5, 23.6, 27].map(at)).toEqual(['good', 'watch', 'watch', 'stop', 'stop']);
  });

  test('a marked keep-out stops the hole, not only its middle', () => {
    const at = (sMm: number) => verdict('joint-distance', withPin(1, { sMm }), undefined, 1);
    expect([5.5, 5.4].map(at)).toEqual(['good', 'stop']);
  });

  test('without a keep-out: half a width the least, one width good', () => {
    const { keepOut: _, ...unmarked } = STRAIGHT;
    const patientCase = straightCase({ ...unmarked, keepOut: undefined } as Partial<CaseFile>);
    const at = (sMm: number) => verdict('joint-distance', withPin(1, { sMm }), patientCase, 1);
    expect([5.5, 5.4, 3, 2.9].map(at)).toEqual(['good', 'watch', 'watch', 'stop']);
  });

  test('neighbours: half a width is good, two pin diameters the least', () => {
    const at = (sMm: number) => verdict('pin-spacing', withPin(1, { sMm }), undefined, 2);
    expect([20.5, 20.6, 21, 21.1].map(at)).toEqual(['good', 'watch', 'watch', 'stop']);
  });

  test('pins of one fragment that lean together meet off the axis', () => {
    const leaning = withPin(1, { sMm: 17, tiltDeg: 30 }, withPin(2, { tiltDeg: -30 }));
    expect(checkOf('pin-spacing', leaning, undefined, 2).value).toBeCloseTo(6 - 2 * 2.5 * Math.tan(Math.PI / 6), 9);
  });

  test('span of less than half the safe length asks for care', () => {
    const at = (sMm: number) => verdict('spread-proximal', withPin(1, { sMm }));
    // Safe: 29 less half a width less the keep-out of 5, 21.5 mm; half of it back from 23 is 12.25.
    expect([10, 12.2, 12.3].map(at)).toEqual(['good', 'good', 'watch']);
  });
});

describe('direction', () => {
  test('inside a corridor up to its edge, outside stop', () => {
    const at = (aboutDeg: number) => verdict('corridor', withPin(1, { aboutDeg }), undefined, 1);
    expect([-30, 0, 30, 31, 180].map(at)).toEqual(['good', 'good', 'good', 'stop', 'stop']);
    expect(checkOf('corridor', withPin(1, { aboutDeg: 40 }), undefined, 1).value).toBe(10);
  });

  test('a corridor across the back of the bone is one corridor', () => {
    const lateral = straightCase({ corridors: [{ fromMm: 0, toMm: 60, aboutDeg: [150, 210] }] });
    expect(verdict('corridor', withPin(1, { aboutDeg: -170 }), lateral, 1)).toBe('good');
    expect(checkOf('corridor', withPin(1, { aboutDeg: 0 }), lateral, 1).value).toBe(150);
  });

  test('pins of a two-sided frame must leave through a corridor too', () => {
    const twoSided = {
      ...FOUR_PINS,
      column: [
        { drawerId: 'putty', clearanceMm: 4 },
        { drawerId: 'putty', clearanceMm: 4, side: 'far' as const },
      ],
    };
    expect(verdict('corridor', twoSided, undefined, 1)).toBe('stop');
  });

  test('no corridor marked: care; none at that place: stop', () => {
    expect(verdict('corridor', FOUR_PINS, straightCase({ corridors: [] }))).toBe('watch');
    const short = straightCase({ corridors: [{ fromMm: 0, toMm: 40, aboutDeg: [-30, 30] }] });
    expect(verdict('corridor', FOUR_PINS, short, 4)).toBe('stop');
  });
});

describe('IM pin', () => {
  const im = (diameterMm: number, tiedIn = true, canalMm: [number, number] | null = [3, 3]) => {
    const drawer = { ...STRAIGHT.drawer, imPins: [{ id: 'im', diameterMm, material: 'steel-cold-worked', count: 1 }] };
    const stations = STRAIGHT.bone.stations.map((station) => ({ ...station, canalMm }));
    return [
      { ...FOUR_PINS, im: { drawerId: 'im', tiedIn } },
      straightCase({ drawer, bone: { ...STRAIGHT.bone, stations } }),
    ] as const;
  };

  test('beside a 1 mm pin in a 3 mm canal 1 mm passes: 3/2 - 1/2', () => {
    expect(checkOf('im-room', ...im(0.8), 1).value).toBeCloseTo(0.2, 9);
    expect([0.8, 0.85, 1, 1.01].map((d) => verdict('im-room', ...im(d), 1))).toEqual([
      'good',
      'watch',
      'watch',
      'stop',
    ]);
  });

  test('fills 30 to 50 % tied in, 60 % left free, never over 80 %', () => {
    expect([1.5, 1.51, 2.4, 2.41].map((d) => verdict('im-fill', ...im(d)))).toEqual(['good', 'watch', 'watch', 'stop']);
    expect([1.8, 1.81].map((d) => verdict('im-fill', ...im(d, false)))).toEqual(['good', 'watch']);
    expect([0.9, 0.89].map((d) => verdict('im-fill-least', ...im(d)))).toEqual(['good', 'watch']);
  });

  test('no canal measured: no IM pin can be chosen, and every wall is an assumption', () => {
    expect(verdict('im-fill', ...im(1, true, null))).toBe('stop');
    expect(checkOf('im-fill', ...im(1, true, null)).value).toBeNull();
    expect(verdict('canal-measured', ...im(1, true, null), 1)).toBe('watch');
  });

  test('with one, two pins a fragment are enough', () => {
    expect(verdict('pins-proximal', ...im(0.8))).toBe('good');
    expect(verdict('pins-proximal', FOUR_PINS)).toBe('watch');
  });
});

describe('whole construct', () => {
  test('one pin in a fragment stops, five ask for care', () => {
    const one = { ...FOUR_PINS, pins: FOUR_PINS.pins.slice(1) };
    expect(verdict('pins-proximal', one)).toBe('stop');
    const pins = [6, 10, 14, 18, 23, 37, 50].map((sMm) => ({ ...FOUR_PINS.pins[0]!, sMm }));
    expect(verdict('pins-most', { ...FOUR_PINS, pins })).toBe('watch');
  });

  test('column: one width of bone in acrylic is good, half the least', () => {
    const at = (diameterMm: number) =>
      verdict(
        'column-size',
        FOUR_PINS,
        straightCase({
          drawer: { ...STRAIGHT.drawer, columns: [{ id: 'putty', material: 'acrylic', diameterMm, youngMPa: 2500 }] },
        }),
      );
    expect([5, 4.9, 2.5, 2.4].map(at)).toEqual(['good', 'watch', 'watch', 'stop']);
  });

  test('a steel rod counts by its bending stiffness: 3.2 mm as 9.5 mm of acrylic', () => {
    const drawer = { ...STRAIGHT.drawer, columns: [{ id: 'putty', material: 'steel-cold-worked', diameterMm: 3.2 }] };
    const { value } = checkOf('column-size', FOUR_PINS, straightCase({ drawer }));
    expect(value).toBeCloseTo((3.2 * (193_000 / 2500) ** 0.25) / 5, 3);
    expect(checksOf(FOUR_PINS, straightCase({ drawer })).some(({ id }) => id === 'column-heat')).toBe(false);
  });

  test('skin: 3 mm good, 2 mm the least; over bare bone never good', () => {
    const at = (clearanceMm: number, patientCase = straightCase()) =>
      verdict('skin-clearance', { ...FOUR_PINS, column: { drawerId: 'putty', clearanceMm } }, patientCase);
    expect([3, 2.9, 2, 1.9].map((mm) => at(mm))).toEqual(['good', 'watch', 'watch', 'stop']);
    expect(at(4, straightCase({ softTissueMm: [] }))).toBe('watch');
  });

  test('acrylic nearer than 10 mm sets hot, putty of this size does not', () => {
    const acrylic = { ...STRAIGHT.drawer, columns: [{ id: 'putty', material: 'acrylic', diameterMm: 7 }] };
    expect(verdict('column-heat', FOUR_PINS, straightCase({ drawer: acrylic }))).toBe('watch');
    expect(verdict('column-heat', FOUR_PINS)).toBe('good');
  });

  test('the drawer must hold as many as are taken', () => {
    const drawer = (count: number) => ({
      ...STRAIGHT.drawer,
      pins: STRAIGHT.drawer.pins.map((pin) => ({ ...pin, count })),
    });
    expect(verdict('drawer-stock', FOUR_PINS, straightCase({ drawer: drawer(4) }))).toBe('good');
    const check = checkOf('drawer-stock', FOUR_PINS, straightCase({ drawer: drawer(3) }));
    expect(check.verdict).toBe('stop');
    expect(check.because).toBe('It takes 4 of the 1 mm pins and the drawer holds 3.');
  });

  test('mass: over 5 % of a mammal or 3 % of a bird asks for care, over 10 % stops', () => {
    const weighs = (massG: number, species: string) =>
      verdict('mass-carried', FOUR_PINS, straightCase({ patient: { species, massG } }));
    const { value } = checkOf('mass-carried', FOUR_PINS);
    const frameG = ((value ?? 0) * 310) / 100;
    expect(weighs(frameG / 0.0501 + 1, 'red squirrel')).toBe('good');
    expect(weighs(frameG / 0.051, 'red squirrel')).toBe('watch');
    expect(weighs(frameG / 0.0501 + 1, 'tawny owl')).toBe('watch');
    expect(weighs(frameG / 0.101, 'red squirrel')).toBe('stop');
  });

  test('a growing patient stops until its growth plates are marked', () => {
    const young = { species: 'red squirrel', massG: 310, ageClass: 'juvenile' };
    const { keepOut: _, ...unmarked } = STRAIGHT;
    const without = { ...unmarked, patient: young };
    expect(
      verdict('growth-plate', FOUR_PINS, straightCase({ ...without, keepOut: undefined } as Partial<CaseFile>)),
    ).toBe('stop');
    expect(verdict('growth-plate', FOUR_PINS, straightCase({ patient: young }))).toBe('good');
    expect(verdict('growth-plate', withPin(1, { sMm: 5.4 }), straightCase({ patient: young }))).toBe('stop');
    expect(checksOf(FOUR_PINS).some(({ id }) => id === 'growth-plate')).toBe(false);
  });

  test('gap strain: 10 % good, above watch; nothing said before it is solved', () => {
    const patientCase = straightCase();
    const facts = frameFacts(patientCase, FOUR_PINS);
    const at = (gapStrainPercent: number | null) =>
      runChecks(checkContext(patientCase, FOUR_PINS, { ...facts, gapStrainPercent })).find(
        ({ id }) => id === 'gap-strain',
      );
    expect([10, 10.1, 150].map((percent) => at(percent)?.verdict)).toEqual(['good', 'watch', 'watch']);
    expect(at(null)).toBeUndefined();
    expect(at(150)?.because).toContain('no tissue bears');
  });
});

test('a pin that comes nearer to the fracture never has a better verdict there', () => {
  const place = fc.double({ min: 6, max: 29, noNaN: true });
  fc.assert(
    fc.property(place, place, fc.double({ min: -30, max: 30, noNaN: true }), (a, b, tiltDeg) => {
      const at = (sMm: number) => WORRY[verdict('fracture-distance', withPin(2, { sMm, tiltDeg }), undefined, 2)];
      expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)));
    }),
    { numRuns: 50 },
  );
});
