import { describe, expect, test } from 'vitest';
import type { Pixel } from '../model/trace.ts';
import { shadowOf } from '../projector/project.ts';
import { CAMERA, FILM, filmOf, IM, MAGNIFIED, PINS, type Pin, place } from './drawn-repair.ts';
import { findPins } from './find-pins.ts';
import { type ExpectedRod, type FoundRod, isFound } from './rod.ts';

/** As the plan might have it: moved across and turned from where the pin is, and off at the tip. */
function expectedOf(pin: Pin, i: number, off: { px: number; deg: number; tipPx: number }): ExpectedRod {
  const [a, b] = [shadowOf(CAMERA, pin.near), shadowOf(CAMERA, pin.tip)];
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + (off.deg * Math.PI) / 180;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const middle: Pixel = [(a[0] + b[0]) / 2 - off.px * Math.sin(angle), (a[1] + b[1]) / 2 + off.px * Math.cos(angle)];
  const at = (s: number): Pixel => [middle[0] + s * Math.cos(angle), middle[1] + s * Math.sin(angle)];
  return {
    name: `P${i + 1}`,
    near: at(-length / 2),
    tip: at(length / 2 + off.tipPx),
    widthPx: (pin.diameterMm * MAGNIFIED) / CAMERA.pitchMm,
  };
}

/** Distance of a point from the line through two others, and the angle between two lines. */
function away(p: Pixel, [a, b]: readonly [Pixel, Pixel]): number {
  const d = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / d;
}
const degrees = ([a, b]: readonly [Pixel, Pixel]) => (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;

function check(found: FoundRod, pin: Pin): void {
  const [near, tip] = [shadowOf(CAMERA, pin.near), shadowOf(CAMERA, pin.tip)];
  const middle: Pixel = [(near[0] + tip[0]) / 2, (near[1] + tip[1]) / 2];
  // a quarter pixel is 0.025 mm: far below what any limit asks for
  expect(away(middle, found.line)).toBeLessThan(0.25);
  expect(Math.abs(degrees(found.line) - degrees([near, tip]))).toBeLessThan(0.25);
  const widthPx = (pin.diameterMm * MAGNIFIED) / CAMERA.pitchMm;
  // standard drawer sizes lie 12 % apart: half of that tells them apart
  expect(Math.abs(found.widthPx! / widthPx - 1)).toBeLessThan(0.06);
  // a pixel of 0.1 mm: the depth limits are whole pin diameters
  const [tx, ty] = found.tip.place!;
  expect(Math.hypot(tx - tip[0], ty - tip[1])).toBeLessThan(1);
}

const SEARCH = { reachPx: 25, turnDeg: 12 };

describe.each(['LIN', 'LOG'] as const)('pins on a film of %s values', (relationship) => {
  const image = filmOf(PINS, { ...FILM, relationship });
  test('are found from 8 pixels, 5 degrees and a tip 15 pixels off', () => {
    const wanted = PINS.map((p, i) =>
      expectedOf(p, i, { px: i === 1 ? -8 : 8, deg: i === 1 ? 5 : -5, tipPx: i === 0 ? 15 : -15 }),
    );
    for (const [i, found] of findPins(image, wanted, SEARCH).entries()) {
      if (!isFound(found)) throw new Error(`${found.name}: ${found.why}`);
      check(found, PINS[i]!);
    }
  });
});

test('a pin in the canal is found through the pins that cross it, and they through it', () => {
  const all = [...PINS, IM];
  const image = filmOf(all);
  const wanted = all.map((p, i) => expectedOf(p, i, { px: 4, deg: 2, tipPx: -8 }));
  for (const [i, found] of findPins(image, wanted, SEARCH).entries()) {
    if (!isFound(found)) throw new Error(`${found.name}: ${found.why}`);
    check(found, all[i]!);
  }
});

describe('the tip of a pin in the canal', () => {
  const im: Pin = { near: place(0, -20.5), tip: place(0, 4.2), diameterMm: 1.6 };
  const tipWith = (others: readonly Pin[]) => {
    const [found] = findPins(filmOf([im, ...others]), [expectedOf(im, 3, { px: 3, deg: 1, tipPx: 10 })], SEARCH);
    if (!isFound(found!)) throw new Error(found!.why);
    const [c, r] = shadowOf(CAMERA, im.tip);
    const [x, y] = found.tip.place!;
    return { away: Math.hypot(x - c, y - r), sdPx: found.tip.sdPx! };
  };
  test('is not lengthened by a pin that crosses aslant just past it', () => {
    // 2 pixels are 0.2 mm, an eighth of the least limit
    expect(tipWith([{ near: place(12, 0.97), tip: place(-4, 6.57), diameterMm: 1.1 }]).away).toBeLessThan(2);
  });
  test('under a crossing pin is less sure than a free one, and within three of its sds', () => {
    const hidden = tipWith([{ near: place(12, 4), tip: place(-4, 4.3), diameterMm: 1.3 }]);
    expect(hidden.away).toBeLessThan(3 * hidden.sdPx);
    expect(hidden.sdPx).toBeGreaterThan(1.2 * tipWith([]).sdPx);
  });
});

test('a pin of five pixels has a line but no thickness', () => {
  const thin: Pin = { ...PINS[0]!, diameterMm: 0.5 };
  const [found] = findPins(filmOf([thin]), [expectedOf(thin, 0, { px: 5, deg: 3, tipPx: 0 })], SEARCH);
  expect(found).toMatchObject({ widthPx: null, widthSdPx: null });
  // a quarter pixel, as for the others
  expect(away(shadowOf(CAMERA, thin.near), (found as FoundRod).line)).toBeLessThan(0.25);
});

describe('what is not there is not found', () => {
  const image = filmOf(PINS.slice(0, 1));
  const none = { px: 0, deg: 0, tipPx: 0 };
  test('a planned pin that was not placed, and no cortex taken for a pin in the canal', () => {
    const found = findPins(image, [expectedOf(PINS[2]!, 2, none), expectedOf(IM, 3, none)], SEARCH);
    for (const f of found) expect(isFound(f)).toBe(false);
  });
  test('a pin that points at the viewer', () => {
    const [found] = findPins(image, [{ name: 'P1', near: [100, 100], tip: [103, 100], widthPx: 9 }], SEARCH);
    expect(found).toMatchObject({ why: expect.stringContaining('viewer') });
  });
  test('one whose place lies off the film', () => {
    const [found] = findPins(image, [{ name: 'P1', near: [900, 100], tip: [1000, 100], widthPx: 9 }], SEARCH);
    expect(found).toMatchObject({ why: expect.stringContaining('off the film') });
  });
});
