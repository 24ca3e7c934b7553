import { expect, test } from 'vitest';
import { testCase, testConstruct } from '../test-case.ts';
import { addPin, clearColumnBy, columnClearance, movePinTo, removePin, startingConstruct, turnPinTo } from './edits.ts';
import { pinKey } from './pin-keys.ts';

const key = (name: string, held: { shiftKey?: boolean; altKey?: boolean } = {}) => ({
  key: name,
  shiftKey: false,
  altKey: false,
  ctrlKey: false,
  metaKey: false,
  ...held,
});

test('arrows move 0.5 mm, with Shift 0.1 mm, and turn 5 degrees', () => {
  const after = (...args: Parameters<typeof key>) => pinKey(key(...args), testConstruct, 2, 52)?.construct.pins[2];
  expect(after('ArrowRight')?.sMm).toBe(31.5);
  expect(after('ArrowLeft', { shiftKey: true })?.sMm).toBe(30.9);
  expect(after('ArrowUp')?.aboutDeg).toBe(5);
  expect(after('ArrowRight', { altKey: true })?.tiltDeg).toBe(5);
  expect(pinKey(key('q'), testConstruct, 2, 52)).toBeNull();
});

test('ten fine steps make one millimetre exactly', () => {
  let construct = testConstruct;
  for (let i = 0; i < 10; i += 1)
    construct = pinKey(key('ArrowRight', { shiftKey: true }), construct, 0, 52)!.construct;
  expect(construct.pins[0]!.sMm).toBe(9);
});

test.each([-200, -0.04, 0, 51.96, 52.3, 200])(
  'a pin never leaves the bone and its direction stays within half a turn: %d',
  (anywhere) => {
    const { sMm } = movePinTo(testConstruct, 1, anywhere, 52).pins[1]!;
    expect(sMm).toBeGreaterThanOrEqual(0);
    expect(sMm).toBeLessThanOrEqual(52);
    const { aboutDeg } = turnPinTo(testConstruct, 1, anywhere * 7).pins[1]!;
    expect(aboutDeg).toBeGreaterThanOrEqual(-180);
    expect(aboutDeg).toBeLessThan(180);
  },
);

test('a pin is added in the widest free stretch, outside keep-outs and fracture, and pins stay in order', () => {
  const { pins } = addPin(testConstruct, testCase);
  expect(pins).toHaveLength(5);
  const places = pins.map((pin) => pin.sMm);
  expect(places).toEqual(places.toSorted((a, b) => a - b));
  const added = places.find((s) => !testConstruct.pins.some((pin) => pin.sMm === s))!;
  expect([14, 37]).toContain(added);
});

test('the last pin cannot be taken out', () => {
  const one = { ...testConstruct, pins: [testConstruct.pins[0]!] };
  expect(removePin(one, 0)).toBe(one);
  expect(removePin(testConstruct, 1).pins.map((pin) => pin.sMm)).toEqual([8, 31, 43]);
});

test('the column comes no nearer than the skin', () => {
  expect(columnClearance(clearColumnBy(testConstruct, -3).column)).toBe(0);
  expect(columnClearance(clearColumnBy(testConstruct, 3.5).column)).toBe(3.5);
});

test('a construct to start from has two pins a fragment, none in the fracture', () => {
  const start = startingConstruct(testCase)!;
  const places = start.pins.map((pin) => pin.sMm);
  expect(places.filter((s) => s > 5 && s < 24)).toHaveLength(2);
  expect(places.filter((s) => s > 26.5 && s < 46)).toHaveLength(2);
});
