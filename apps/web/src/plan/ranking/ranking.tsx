/** The search over the drawer: its button, its progress in words, and up to four plans that differ in kind. */
import './ranking.css';
import type { ReactNode } from 'react';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import type { SearchState } from '../engine/use-search.ts';
import type { PlanCardFacts } from './card-facts.ts';
import { PlanCard } from './plan-card.tsx';

interface RankingProps {
  readonly cards: readonly PlanCardFacts[];
  readonly candidates: number | null;
  readonly nearest: string | null;
  readonly search: SearchState;
  /** Why the cards are no longer of now; null where they are. */
  readonly stale: string | null;
  /** Further buttons beside the one that ranks. */
  readonly children: ReactNode;
  readonly onRank: () => void;
  readonly onChoose: (card: PlanCardFacts) => void;
}

export function RankingPanel(props: RankingProps) {
  const { cards, candidates, nearest, search, stale, children, onRank, onChoose } = props;
  const isChanged = cards.length > 0 && !cards.some(({ isShown }) => isShown);
  return (
    <section className="plans" aria-labelledby="plans-title">
      <header className="side-head">
        <h2 id="plans-title">Plans</h2>
        {candidates !== null && (
          <span className="quiet">{`of ${candidates.toLocaleString('en').replace(/,/g, '\u2009')} tried`}</span>
        )}
      </header>
      {cards.length === 0 && !search.isRunning && (
        <p className="quiet">{nearest ?? 'No plans yet. What is drawn is only a place to start from.'}</p>
      )}
      <ul className="plan-cards">
        {cards.map((card) => (
          <li key={card.key}>
            <PlanCard card={card} onChoose={() => onChoose(card)} />
          </li>
        ))}
      </ul>
      <div className="plans-buttons">
        {search.isRunning ? (
          <button type="button" className="button" onClick={search.stop}>
            Stop the search
          </button>
        ) : (
          <button type="button" className={cards.length === 0 ? 'button button-main' : 'button'} onClick={onRank}>
            {cards.length === 0 ? 'Rank plans' : 'Rank again'}
          </button>
        )}
        {children}
      </div>
      {stale && (
        <p className="plans-stale">
          <VerdictWord verdict="watch" word={stale} />
        </p>
      )}
      <p className="quiet" role="status">
        {search.words || (isChanged ? 'Shown as you changed it.' : '')}
      </p>
    </section>
  );
}
