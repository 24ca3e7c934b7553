import { solveFrame } from '@bonewright/frame';
import { expect, test } from 'vitest';
import { exportFrames } from '../export-frames.ts';
import { type StraightBone, straightBone } from '../straight-bone.ts';
import { bucklingBound } from './figures-of-load.ts';
import { constructSolver } from './solver.ts';

const RABBIT: StraightBone = {
  lengthMm: 60,
  outerMm: 6,
  canalMm: 4,
  gapMm: 2,
  pinMm: 1.2,
  pins: [[10], [22], [38], [50]],
  columnMm: 6,
  clearanceMm: 6,
  grip: 'usual',
  loads: { axialN: 10, bendingNmm: 0.01, torsionNmm: 0.01 },
};

test.each<[string, Partial<StraightBone>]>([
  ['as usual', {}],
  ['thin pins', { pinMm: 0.7 }],
  ['a column far off', { clearanceMm: 18 }],
  ['pins bunched', { pins: [[20], [25], [35], [40]] }],
  ['an IM pin tied in', { im: { diameterMm: 1.5, tiedIn: true } }],
  ['two columns', { twoColumns: true }],
  ['a soft column', { columnYoungMPa: 300 }],
  [
    'tilted pins',
    {
      pins: [
        [10, 15],
        [22, -15],
        [38, 15],
        [50, -15],
      ],
    },
  ],
])('%s: the quick bound lies below the linear buckling of the same frame, within a factor of 4', (_, change) => {
  const patientCase = straightBone({ ...RABBIT, ...change });
  const solver = constructSolver(patientCase, patientCase.construct!);
  const bound = bucklingBound(solver, solver.solve(solver.nominal));
  const model = exportFrames(patientCase, patientCase.construct!)['axial-ball'];
  const factor = solveFrame({ ...model, buckling: true }).loads['axial-ball']!.criticalFactor!;
  expect(bound).toBeLessThan(factor);
  expect(bound).toBeGreaterThan(factor / 4);
});
