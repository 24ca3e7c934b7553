/** The five margins, worst first; each opens to why. */
import { LOAD_WORDS, type LoadName, type Plan } from '@bonewright/construct';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { figure } from '../words.ts';
import { MarginAxis, MarginBar } from './margin-bar.tsx';
import { marginsWorstFirst, type RankedMargin } from './worst.ts';

interface MarginListProps {
  readonly plan: Plan;
  readonly isQuick: boolean;
  readonly onOpen: (load: LoadName) => void;
}

export function MarginList({ plan, isQuick, onOpen }: MarginListProps) {
  return (
    <div className={isQuick ? 'margins margins-quick' : 'margins'}>
      <ul className="margin-list">
        {marginsWorstFirst(plan).map((ranked) => (
          <li key={ranked.load}>
            <MarginRow ranked={ranked} onOpen={() => onOpen(ranked.load)} />
          </li>
        ))}
      </ul>
      <MarginAxis />
    </div>
  );
}

/** The button that opens that margin: focus comes back to it. */
export const marginId = (load: LoadName): string => `margin-${load}`;

function MarginRow({ ranked, onOpen }: { readonly ranked: RankedMargin; readonly onOpen: () => void }) {
  const { load, margin, verdict } = ranked;
  return (
    <>
      <button type="button" id={marginId(load)} className="margin-head" onClick={onOpen}>
        <span className="margin-name">{LOAD_WORDS[load]}</span>
        <span className="margin-figure">{figure(margin.p05, 2)}</span>
        <span className="margin-place">{margin.weakest}</span>
        <VerdictWord verdict={verdict} />
        <span className="sr-only">, open why</span>
      </button>
      <MarginBar margin={margin} verdict={verdict} says={spreadWords(ranked)} />
    </>
  );
}

export function spreadWords({ load, margin }: RankedMargin): string {
  return `${LOAD_WORDS[load]}: 5 in 100 below ${figure(margin.p05, 2)}, half below ${figure(margin.p50, 2)}, 95 in 100 below ${figure(margin.p95, 2)}`;
}
