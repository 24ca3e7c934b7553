/** A plan of which pins were left out, said in the numbers that the surgeon knows: those of the plan on the wall. */
import { eachLoad, type Plan } from '../model/plan.ts';

/** The plan with `P2` read as the plan's number of its second pin, in every sentence. */
export function inPlanNumbers(plan: Plan, numbers: readonly number[]): Plan {
  const named = (words: string) =>
    words.replace(/\bP(\d+)\b/g, (word, digits: string) => {
      const number = numbers[Number(digits) - 1];
      return number === undefined ? word : `P${number}`;
    });
  return {
    ...plan,
    checks: plan.checks.map(({ pin, ...check }) => {
      const said = { ...check, because: named(check.because) };
      return pin === undefined ? said : { ...said, pin: numbers[pin - 1] ?? pin };
    }),
    loads: eachLoad((load) => {
      const figures = plan.loads[load];
      return { ...figures, margin: { ...figures.margin, weakest: named(figures.margin.weakest) } };
    }),
    sensitivity: plan.sensitivity.map((each) => ({ ...each, input: named(each.input) })),
  };
}
