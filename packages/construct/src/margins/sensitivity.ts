/** What to measure again: how the worst margin moves when one input alone is one standard deviation off. */
import { LOADS } from '../model/plan.ts';
import { weakestUnder } from '../strength/figures-of-load.ts';
import type { ConstructSolver } from '../strength/solver.ts';
import type { Input } from './inputs.ts';
import { copyOf } from './sample.ts';

export interface Sensitivity {
  readonly input: string;
  /** Change of the worst margin in per cent for one standard deviation, in the direction that lowers it. */
  readonly effectOnMarginPercent: number;
}

/** First-order effects of all inputs on the least margin over the loads, largest first. */
export function sensitivities(solver: ConstructSolver, inputs: readonly Input[]): Sensitivity[] {
  const middle = worst(solver, solver.nominal);
  const effects = inputs.map(({ words, move }) => {
    const lower = [-1, 1].map((z) => {
      const figures = copyOf(solver.nominal);
      move(figures, z);
      return worst(solver, figures) / middle - 1;
    });
    return { input: words, effectOnMarginPercent: 100 * Math.min(0, ...lower) };
  });
  return effects.toSorted((a, b) => a.effectOnMarginPercent - b.effectOnMarginPercent);
}

function worst(solver: ConstructSolver, figures: ConstructSolver['nominal']): number {
  const solution = solver.solve(figures);
  return Math.min(...LOADS.map((load) => weakestUnder(solver, load, solution).margin));
}
