/** One construct judged: checks, the five loads, margins with their spread, what to measure again, the verdict. */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import { inputsOf } from './margins/inputs.ts';
import { marginOf, sampleWeakest } from './margins/sample.ts';
import { sensitivities } from './margins/sensitivity.ts';
import type { Case, Construct } from './model/case-file.ts';
import { checkConstruct } from './model/case-rules.ts';
import { eachLoad, LOADS, type LoadName, type Margin, type Plan } from './model/plan.ts';
import { type Figured, planOf } from './plan-of.ts';
import { figuresOfLoad, weakestUnder } from './strength/figures-of-load.ts';
import { type ConstructSolver, constructSolver } from './strength/solver.ts';

export interface SampleOptions {
  readonly samples: number;
  readonly seed: number;
}

/** Assesses the construct that the case holds. Throws InputError where it holds none, or one that cannot be. */
export function assess(patientCase: Case): Plan {
  const { construct, samples, seed } = patientCase;
  if (!construct) throw new InputError('the case holds no construct', 'construct', 'give one, or ask for plans');
  return assessConstruct(patientCase, construct, { samples, seed });
}

/** Full assessment of a construct: margins from seeded samples, and what to measure again. */
export function assessConstruct(patientCase: Case, construct: Construct, options: SampleOptions): Plan {
  const { solver, figured } = solvedAtMiddle(patientCase, construct);
  const inputs = inputsOf(patientCase, construct);
  const rows = sampleWeakest(solver, inputs, options);
  const margins = eachLoad((load) => marginOf(rows, load));
  const sensitivity = sensitivities(solver, inputs, fallingShort(margins));
  return planOf(figured, (load) => margins[load], sensitivity);
}

/** Loads whose margin asks for care, or the one that comes nearest to it. */
function fallingShort(margins: Readonly<Record<LoadName, Margin>>): LoadName[] {
  const least = Math.min(...LOADS.map((load) => margins[load].p05));
  return LOADS.filter((load) => margins[load].p05 <= Math.max(least, value('margin.watch')));
}

/** Middle values only: each margin's three figures are one, nothing is sampled. Throws as `assess` does. */
export function evaluateNominal(patientCase: Case, construct: Construct): Plan {
  const { figured } = solvedAtMiddle(patientCase, construct);
  const margin = (load: LoadName) => {
    const { margin: middle, words } = figured.weakest[load];
    return { p05: middle, p50: middle, p95: middle, weakest: words };
  };
  return planOf(figured, margin, []);
}

function solvedAtMiddle(patientCase: Case, construct: Construct): { solver: ConstructSolver; figured: Figured } {
  checkConstruct(patientCase, construct, 'construct');
  const solver = constructSolver(patientCase, construct);
  const solution = solver.solve(solver.nominal);
  const loads = eachLoad((load) => figuresOfLoad(patientCase, solver, load, solution));
  const weakest = eachLoad((load) => weakestUnder(solver, load, solution));
  return { solver, figured: { patientCase, construct, solution, places: solver.places, loads, weakest } };
}
