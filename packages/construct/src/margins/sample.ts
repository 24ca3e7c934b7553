/** Seeded samples of a construct: its weakest place under each load, drawn a few hundred times. */
import { LOADS, type LoadName, type Margin } from '../model/plan.ts';
import { type Weakest, weakestUnder } from '../strength/figures-of-load.ts';
import type { ConstructSolver } from '../strength/solver.ts';
import { draftOf, settled } from './draft.ts';
import { normalAt } from './draw.ts';
import type { Input } from './input.ts';

/** Figures with every input drawn for that sample. */
export function drawn({ nominal, middleMm }: ConstructSolver, inputs: readonly Input[], seed: number, sample: number) {
  const draft = draftOf(nominal);
  for (let i = 0; i < inputs.length; i += 1) inputs[i]!.move(draft, normalAt(seed, sample, i));
  return settled(draft, nominal.profile, middleMm);
}

/** Weakest places under each load, one row a sample. */
export function sampleWeakest(
  solver: ConstructSolver,
  inputs: readonly Input[],
  { samples, seed }: { readonly samples: number; readonly seed: number },
): Weakest[][] {
  return Array.from({ length: samples }, (_, i) => {
    const solution = solver.solve(drawn(solver, inputs, seed, i));
    return LOADS.map((load) => weakestUnder(solver, load, solution));
  });
}

const LOW = 5;
const MIDDLE = 50;
const HIGH = 95;

/** The margin of one load from its samples: percentiles, and the place that is weakest most often. */
export function marginOf(rows: readonly (readonly Weakest[])[], load: LoadName): Margin {
  const column = rows.map((row) => row[LOADS.indexOf(load)]!);
  const sorted = Float64Array.from(column, (w) => w.margin).sort();
  const counts = new Map<string, number>();
  for (const { words } of column) counts.set(words, (counts.get(words) ?? 0) + 1);
  const [weakest] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a));
  return { p05: percentile(sorted, LOW), p50: percentile(sorted, MIDDLE), p95: percentile(sorted, HIGH), weakest };
}

/** Percentile of sorted numbers, between the nearest two. */
export function percentile(sorted: Float64Array, percent: number): number {
  const at = ((sorted.length - 1) * percent) / 100;
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (at - low);
}
