/** The anaesthetics of a case, one after another: readings, and what happened beside them in words. */
import { sittings } from '@bonewright/ward';
import type { CaseState } from './case-state.ts';
import type { Reading } from './kinds/chart.ts';

export interface ChartEntry {
  readonly at: string;
  readonly kind: 'mark' | 'drug' | 'fluid' | 'blood';
  readonly words: string;
}

export interface ChartSitting {
  readonly from: string;
  readonly to: string;
  readonly readings: readonly Reading[];
  /** In time. */
  readonly entries: readonly ChartEntry[];
  readonly bloodMl: number;
  readonly fluidMl: number;
}

/** In time; only those in which somebody read something or marked an event. */
export function chartSittings(state: CaseState): ChartSitting[] {
  return sittings(everything(state)).flatMap((together) => {
    const readings = together.flatMap(({ reading }) => (reading ? [reading] : []));
    const entries = together.flatMap(({ entry }) => (entry ? [entry] : []));
    if (readings.length === 0 && !entries.some(({ kind }) => kind === 'mark')) return [];
    const sum = (part: 'bloodMl' | 'fluidMl') => together.reduce((total, one) => total + (one[part] ?? 0), 0);
    const [first, last] = [together[0]!, together.at(-1)!];
    return [{ from: first.at, to: last.at, readings, entries, bloodMl: sum('bloodMl'), fluidMl: sum('fluidMl') }];
  });
}

interface OnChart {
  readonly at: string;
  readonly reading?: Reading;
  readonly entry?: ChartEntry;
  readonly bloodMl?: number;
  readonly fluidMl?: number;
}

function everything({ chart, doses }: CaseState): OnChart[] {
  const entry = (at: string, kind: ChartEntry['kind'], words: string) => ({ at, entry: { at, kind, words } });
  return [
    ...chart.readings.map(({ value }) => ({ at: value.at, reading: value })),
    ...chart.marks.map(({ value: { at, mark, words } }) => entry(at, 'mark', markWords(mark, words))),
    ...doses.flatMap(({ line, signed, given, voided }) =>
      given && signed && !voided
        ? [entry(given.value.at, 'drug', `${line.drug} ${signed.value.drawnMl} ml ${line.route}`)]
        : [],
    ),
    ...chart.fluids.map(({ value: { at, ml, what, route } }) => ({
      ...entry(at, 'fluid', `${ml} ml of ${what} ${route}`),
      fluidMl: ml,
    })),
    ...chart.blood.map(({ value: { at, ml } }) => ({ ...entry(at, 'blood', `${ml} ml of blood lost`), bloodMl: ml })),
  ];
}

const markWords = (mark: string, words: string): string =>
  mark === 'other' && words ? words : [mark, words].filter(Boolean).join(': ');
