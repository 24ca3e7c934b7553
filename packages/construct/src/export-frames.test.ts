import { readFrame, solveFrame, type Vec6 } from '@bonewright/frame';
import { describe, expect, test } from 'vitest';
import owl from '../cases/solid/owl-tibiotarsus-tilted.json' with { type: 'json' };
import { evaluateNominal } from './assess.ts';
import { exportFrames } from './export-frames.ts';
import type { Case } from './model/case-file.ts';
import { LOADS, type LoadName } from './model/plan.ts';
import { readCase } from './read-case.ts';
import { type StraightBone, straightBone } from './straight-bone.ts';

const RABBIT: StraightBone = {
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4.5,
  gapMm: 0.1,
  pinMm: 1.4,
  pins: [[12], [30], [50], [68]],
  columnMm: 9,
  clearanceMm: 6,
  grip: 'usual',
  loads: { axialN: 25, bendingNmm: 300, torsionNmm: 150 },
};

const CASES: readonly (readonly [string, Case])[] = [
  ['tilted pins, bonded', readCase(owl)],
  ['a gap that closes', straightBone(RABBIT)],
  ['IM pin tied in', straightBone({ ...RABBIT, im: { diameterMm: 2, tiedIn: true } })],
  ['two columns', straightBone({ ...RABBIT, twoColumns: true })],
];

const DEGREES = 180 / Math.PI;

/** Stiffness as the command-line contract defines it, from a solved frame and its own loads. */
function stiffnessOf(load: LoadName, distal: Vec6, proximal: Vec6, applied: Vec6): number {
  if (load.startsWith('axial')) return applied[0] / distal[0];
  if (load === 'torsion') return applied[3] / (distal[3] * DEGREES);
  const moment = Math.hypot(applied[4], applied[5]);
  const turn = [4, 5].reduce((sum, i) => sum + ((distal[i]! - proximal[i]!) * applied[i]!) / moment, 0);
  return moment / (turn * DEGREES);
}

describe.each(CASES)('%s', (_, patientCase) => {
  const construct = patientCase.construct!;
  const plan = evaluateNominal(patientCase, construct);
  const frames = exportFrames(patientCase, construct);
  test.each(LOADS)('%s: the exported frame, read and solved on its own, has the printed stiffness', (load) => {
    const model = readFrame(JSON.parse(JSON.stringify(frames[load])));
    expect(Object.keys(model.loads)).toEqual([load]);
    const { displacements } = solveFrame(model).loads[load]!;
    const applied = model.loads[load]!.distal!;
    const stiffness = stiffnessOf(load, displacements.distal!, displacements.proximal!, applied);
    // Same equations, solved once with all loads together and once alone: 1e-6 is the solver's own promise.
    expect(stiffness / plan.loads[load].stiffness).toBeCloseTo(1, 6);
  });
});

test('the end nodes lie on the bone’s axis, x runs distally', () => {
  const { nodes } = exportFrames(readCase(owl), readCase(owl).construct!).torsion;
  expect(nodes.proximal).toEqual([0, 0, 0]);
  expect(nodes.distal).toEqual([52, 0, 0]);
});
