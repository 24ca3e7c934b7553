/** One ranked plan: name, p05, what it is made of, mark with word. Pressing it shows that plan. */
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { figure } from '../words.ts';
import type { PlanCardFacts } from './card-facts.ts';

export function PlanCard({ card, onChoose }: { readonly card: PlanCardFacts; readonly onChoose: () => void }) {
  return (
    <button
      type="button"
      className={card.isShown ? 'plan-card plan-card-shown' : 'plan-card'}
      aria-pressed={card.isShown}
      onClick={onChoose}
    >
      <span className="plan-card-head">
        <span className="plan-card-name">{card.name}</span>
        <strong className="plan-card-figure">{figure(card.p05, 2)}</strong>
      </span>
      {card.lines.map((line) => (
        <span key={line} className="plan-card-line">
          {line}
        </span>
      ))}
      <span className="plan-card-foot">
        <VerdictWord verdict={card.verdict} {...(card.lastResort ? { word: 'last resort' } : {})} />
        {card.isShown && <span className="plan-card-here">shown</span>}
      </span>
    </button>
  );
}
