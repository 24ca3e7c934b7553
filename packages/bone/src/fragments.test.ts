import { expect, test } from 'vitest';
import { fragmentAt, fragmentsOf } from './index.ts';

const fracture = { fromMm: 20, toMm: 26, gapMm: 2, obliquityDeg: 0, comminuted: false };

test('the gap lies open in the middle of the broken stretch', () => {
  const fragments = fragmentsOf(50, fracture);
  expect(fragments).toMatchObject({ proximal: [0, 22], distal: [24, 50], openMm: 2, facesMeet: true });
  expect([10, 22, 23, 24, 50].map((s) => fragmentAt(fragments, s))).toEqual([
    'proximal',
    'proximal',
    null,
    'distal',
    'distal',
  ]);
});

test('in pieces, nothing in the stretch carries load and no faces meet', () => {
  const fragments = fragmentsOf(50, { ...fracture, comminuted: true });
  expect(fragments).toMatchObject({ proximal: [0, 20], distal: [26, 50], openMm: 6, facesMeet: false });
});
