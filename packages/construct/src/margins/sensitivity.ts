/** What to measure again: how the margins that fall short move when one input alone is one standard deviation off. */
import { LOADS, type LoadName } from '../model/plan.ts';
import { weakestUnder } from '../strength/figures-of-load.ts';
import type { ConstructSolver } from '../strength/solver.ts';
import { draftOf, settled } from './draft.ts';
import type { Input } from './input.ts';

export interface Sensitivity {
  readonly input: string;
  /** Evidence id of its spread; absent where the case itself states it. */
  readonly evidence?: string;
  /** Change in per cent of the margin it hurts most, for one standard deviation in the direction that lowers it. */
  readonly effectOnMarginPercent: number;
}

/** First-order effects of every input on the margins of those loads, largest first. */
export function sensitivities(
  solver: ConstructSolver,
  inputs: readonly Input[],
  loads: readonly LoadName[] = LOADS,
): Sensitivity[] {
  const middle = margins(solver, solver.nominal, loads);
  const effects = inputs.map(({ words, evidence, move }) => {
    const changes = [-1, 1].flatMap((z) => {
      const draft = draftOf(solver.nominal);
      move(draft, z);
      const moved = margins(solver, settled(draft, solver.nominal.profile, solver.middleMm), loads);
      return moved.map((margin, i) => margin / middle[i]! - 1);
    });
    const effectOnMarginPercent = 100 * Math.min(0, ...changes);
    return { input: words, effectOnMarginPercent, ...(evidence ? { evidence } : {}) };
  });
  return effects.toSorted((a, b) => a.effectOnMarginPercent - b.effectOnMarginPercent);
}

function margins(solver: ConstructSolver, figures: ConstructSolver['nominal'], loads: readonly LoadName[]): number[] {
  const solution = solver.solve(figures);
  return loads.map((load) => weakestUnder(solver, load, solution).margin);
}
