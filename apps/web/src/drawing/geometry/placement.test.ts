import { evaluateNominal } from '@bonewright/construct';
import { expect, test } from 'vitest';
import { testCase, testConstruct } from '../../plan/test-case.ts';
import { distance, place } from './placement.ts';
import { inPlane, sideProfile } from './side-profile.ts';

const tilted = {
  ...testConstruct,
  pins: testConstruct.pins.map((pin, i) => ({ ...pin, tiltDeg: [15, 0, -10, 5][i]!, aboutDeg: [20, 20, -10, 0][i]! })),
};

test.each([
  ['square pins', testConstruct],
  ['tilted and turned pins', tilted],
])('drawn free lengths are those the plan is solved with: %s', (_, construct) => {
  const drawn = place(testCase, construct).pins.map((pin) => distance(pin.nearWall, pin.columnNear));
  const solved = evaluateNominal(testCase, construct).pins.map((pin) => pin.freeLengthMm);
  // 0.15 mm: the drawing takes the column's full depth at a pin that misses its middle a little; 2 pixels at full size.
  for (const [i, mm] of drawn.entries()) expect(Math.abs(mm - solved[i]!)).toBeLessThan(0.15);
});

test('a pin crosses the axis at its place, with the walls to either side', () => {
  const { pins } = place(testCase, testConstruct);
  pins.forEach((pin, i) => {
    expect(pin.axis[0]).toBe(testConstruct.pins[i]!.sMm);
    expect(distance(pin.farWall, pin.axis)).toBeCloseTo(distance(pin.axis, pin.nearWall), 9);
    expect(pin.tip[1]).toBeLessThan(pin.farWall[1]);
    expect(pin.end[1]).toBeGreaterThan(pin.columnNear[1]);
  });
});

test('a tied-in IM pin starts in the column and ends in the bone', () => {
  const { im, columns } = place(testCase, testConstruct);
  const first = im!.line[0]!;
  const height = columns[0]!.line[0]![1];
  expect(Math.abs(first[1] - height)).toBeLessThan(columns[0]!.diameterMm / 2);
  expect(im!.line.at(-1)![0]).toBeGreaterThan(testCase.fracture.toMm);
});

test('the broken faces are the gap apart and lean as the fracture does', () => {
  const [proximal, distal] = sideProfile(testCase, 0).fragments;
  const middle = (face: readonly (readonly [number, number])[]) => face[(face.length - 1) / 2]![0];
  expect(middle(distal!.face) - middle(proximal!.face)).toBeCloseTo(testCase.fracture.gapMm, 9);
  expect(proximal!.face[0]![0]).toBeLessThan(proximal!.face.at(-1)![0]);
});

test('a point is seen in the frame’s plane by its height towards the column', () => {
  expect(inPlane([7, 0, 3], 90)[1]).toBeCloseTo(3, 12);
  expect(inPlane([7, 0, 3], 0)[1]).toBeCloseTo(0, 12);
});
