/** Margins of a construct whose every input is drawn once: a truth to test intervals against. */
import type { Case, Construct } from '../model/case-file.ts';
import { eachLoad, type LoadName } from '../model/plan.ts';
import { weakestUnder } from '../strength/figures-of-load.ts';
import { constructSolver } from '../strength/solver.ts';
import { inputsOf } from './inputs.ts';
import { drawn } from './sample.ts';

/** One margin a load, for each of `count` truths. The construct must have been checked. */
export function drawnMargins(
  patientCase: Case,
  construct: Construct,
  { count, seed }: { readonly count: number; readonly seed: number },
): Readonly<Record<LoadName, number>>[] {
  const inputs = inputsOf(patientCase, construct);
  const solver = constructSolver(patientCase, construct);
  return Array.from({ length: count }, (_, truth) => {
    const solution = solver.solve(drawn(solver, inputs, seed, truth));
    return eachLoad((load) => weakestUnder(solver, load, solution).margin);
  });
}
