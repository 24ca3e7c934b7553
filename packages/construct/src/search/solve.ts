/** Solves constructs at their middle values, each once, and counts. */
import type { Case, Construct } from '../model/case-file.ts';
import type { Plan } from '../model/plan.ts';
import type { Evaluators } from './evaluators.ts';
import { middleWorth } from './worth.ts';

export interface Solved {
  readonly construct: Construct;
  readonly plan: Plan;
  readonly worth: number;
}

/** Null where a check stops the construct. */
export type Solve = (construct: Construct) => Solved | null;

export function solverFor(patientCase: Case, nominal: Evaluators['nominal']): { solve: Solve; solved: () => number } {
  const known = new Map<string, Solved | null>();
  let count = 0;
  const solve: Solve = (construct) => {
    const key = JSON.stringify(construct);
    const before = known.get(key);
    if (before !== undefined) return before;
    count += 1;
    const plan = nominal(patientCase, construct);
    const isStopped = plan.checks.some(({ verdict }) => verdict === 'stop');
    const solved = isStopped ? null : { construct, plan, worth: middleWorth(plan) };
    known.set(key, solved);
    return solved;
  };
  return { solve, solved: () => count };
}
