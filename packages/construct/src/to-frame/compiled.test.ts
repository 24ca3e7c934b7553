import { expect, test } from 'vitest';
import { evaluateNominal } from '../assess.ts';
import { type PinAt, type StraightBone, straightBone } from '../straight-bone.ts';

const RABBIT: StraightBone = {
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4.5,
  gapMm: 0.05,
  pinMm: 1.4,
  pins: [[12], [30], [50], [68]],
  columnMm: 9,
  clearanceMm: 6,
  im: { diameterMm: 2, tiedIn: true },
  grip: 'usual',
  loads: { axialN: 25, bendingNmm: 300, torsionNmm: 150 },
};
const answer = (change: Partial<StraightBone>): string => {
  const patientCase = straightBone({ ...RABBIT, ...change });
  return JSON.stringify(evaluateNominal(patientCase, patientCase.construct!));
};

test('a frame that was used for other sizes, pins moved and contacts shut, answers to the last bit as a new one', () => {
  const others: Partial<StraightBone>[] = [
    { pinMm: 1 },
    { pins: [[14, 10], [33], [50], [66, -20]] as PinAt[] },
    { gapMm: 1 },
    { twoColumns: true },
    { grip: 'bonded' },
  ];
  const fresh = [{}, ...others].map(answer);
  const again = [...others.toReversed(), {}].map(answer);
  expect(again).toEqual([...fresh.slice(1).toReversed(), fresh[0]]);
});
