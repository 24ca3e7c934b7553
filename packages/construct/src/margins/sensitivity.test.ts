import { expect, test } from 'vitest';
import squirrel from '../../cases/solid/squirrel-tibia.json' with { type: 'json' };
import { LOADS } from '../model/plan.ts';
import { readCase } from '../read-case.ts';
import { constructSolver } from '../strength/solver.ts';
import type { Input } from './input.ts';
import { inputsOf } from './inputs.ts';
import { sampleWeakest } from './sample.ts';
import { sensitivities } from './sensitivity.ts';
import { factorOf } from './spread.ts';

const read = readCase(squirrel);
const construct = { ...read.construct!, grip: 'usual' as const };
const solver = constructSolver(read, construct);

test('largest effect first, none of them raises the margin', () => {
  const effects = sensitivities(solver, inputsOf(read, construct)).map((s) => s.effectOnMarginPercent);
  expect(effects).toEqual([...effects].sort((a, b) => a - b));
  expect(Math.max(...effects)).toBeLessThanOrEqual(0);
});

test('bending load: with open gaps the margin falls just as the load rises', () => {
  const bending = sensitivities(solver, inputsOf(read, construct), ['bending-in-plane']).find(
    (s) => s.input === 'bending load',
  )!;
  // Nothing touches, so stress is linear in load; 1e-6 is the solver's promise.
  expect(bending.effectOnMarginPercent).toBeCloseTo(100 * (1 / factorOf('loads.misstep.bending', 1) - 1), 4);
});

test('an input that moves nothing has no effect, whatever was solved before', () => {
  const idle: Input = { words: 'idle', evidence: null, move: () => {} };
  sampleWeakest(solver, inputsOf(read, construct), { samples: 3, seed: 1 });
  expect(sensitivities(solver, [idle], LOADS)[0]!.effectOnMarginPercent).toBeCloseTo(0, 12);
});
