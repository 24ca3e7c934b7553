/** The five margins in the order that matters: worst first. */
import {
  type LoadFigures,
  type LoadName,
  loadsWorstFirst,
  type Margin,
  marginVerdict,
  type Plan,
  type Verdict,
} from '@bonewright/construct';

export interface RankedMargin {
  readonly load: LoadName;
  readonly figures: LoadFigures;
  readonly margin: Margin;
  readonly verdict: Verdict;
}

export function marginsWorstFirst(plan: Plan): RankedMargin[] {
  return loadsWorstFirst(plan).map((load) => {
    const figures = plan.loads[load];
    return { load, figures, margin: figures.margin, verdict: marginVerdict(figures.margin) };
  });
}

export function worstMargin(plan: Plan): RankedMargin {
  return marginsWorstFirst(plan)[0]!;
}
