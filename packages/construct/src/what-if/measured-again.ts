/**
 * What a second reading of one input would be worth: two equal readings halve its variance, and the lower percentile
 * comes up by what the whole spread narrows. The middle stays; a reading that turns out lower lowers it.
 */
import type { Margin, Plan } from '../model/plan.ts';
import { leastMargin } from '../search/worth.ts';
import type { Improvement } from './improvements.ts';

/** Standard deviations from the middle to the 5th percentile of a normal distribution. */
const Z_05 = 1.645;

/** Inputs that a hand can measure, and how it is asked for; the others rest on the registry. */
const ASKED: readonly (readonly [RegExp, (input: string) => string])[] = [
  [/^(canal width|width of the bone|fracture gap)/, (input) => `Measure the ${input} again`],
  [/^(free length|height of the|diameter of the)/, (input) => `Measure the ${input} once it is in`],
  [/^(modulus|strength) of the column/, (input) => `Bench test the putty: ${input}`],
];

/** One for each measurable input of the plan's sensitivities. */
export function measuredAgain(plan: Plan): Improvement[] {
  const worst = leastMargin(plan);
  return plan.sensitivity.flatMap(({ input, effectOnMarginPercent }) => {
    const ask = ASKED.find(([pattern]) => pattern.test(input))?.[1];
    return ask ? [{ words: ask(input), worstP05: narrowed(worst, effectOnMarginPercent / 100), construct: null }] : [];
  });
}

/** The 5th percentile with half the variance of one input gone; spreads taken in the logarithm. */
function narrowed({ p05, p50 }: Margin, effect: number): number {
  if (p05 <= 0 || p50 <= p05) return p05;
  const total = Math.log(p50 / p05) / Z_05;
  const left = Math.sqrt(Math.max(0, total ** 2 - effect ** 2 / 2));
  return p50 * Math.exp(-Z_05 * left);
}
