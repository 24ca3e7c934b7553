/** When the patient woke from its last anaesthetic, as the chart says. */
import type { CaseState } from '@bonewright/casebook';

const OVER: readonly string[] = ['vaporiser off', 'tube out', 'righted itself'];

/** The first of these marks after the last induction; null while there is none. */
export function wokeAt({ chart: { marks } }: Pick<CaseState, 'chart'>): string | null {
  const began = marks.findLast(({ value }) => value.mark === 'induction')?.value.at ?? '';
  return marks.find(({ value }) => OVER.includes(value.mark) && value.at >= began)?.value.at ?? null;
}
