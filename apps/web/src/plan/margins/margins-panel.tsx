/** The five margins worst first, and whether their figures are quick or full ones. */
import './margins.css';
import type { LoadName, Plan } from '@bonewright/construct';
import { memo, type ReactNode } from 'react';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import type { Assessment } from '../engine/use-assessment.ts';
import { MarginList } from './margin-list.tsx';
import { worstMargin } from './worst.ts';

interface MarginsPanelProps {
  readonly assessment: Assessment;
  readonly samples: number;
  readonly onOpen: (load: LoadName) => void;
  /** Beside the title. */
  readonly children?: ReactNode;
}

export const MarginsPanel = memo(({ assessment, samples, onOpen, children }: MarginsPanelProps) => {
  const { plan, exactness, why } = assessment;
  return (
    <section className="planner-margins" aria-labelledby="margins-title">
      <header className="side-head">
        <h2 id="margins-title">Margins</h2>
        {children}
      </header>
      <p className="margins-state quiet" data-exactness={exactness}>
        {stateWords(assessment, samples)}
      </p>
      {why && <p className="callout callout-stop">{why}</p>}
      {plan && <Beyond plan={plan} />}
      {plan && <MarginList plan={plan} isQuick={exactness === 'quick'} onOpen={onOpen} />}
    </section>
  );
});

/** The plan's verdict, where checks make it worse than its margins. */
function Beyond({ plan }: { readonly plan: Plan }) {
  if (plan.verdict === worstMargin(plan).verdict) return null;
  const count = plan.checks.filter(({ verdict }) => verdict === plan.verdict).length;
  const s = count === 1 ? 's' : '';
  const does = plan.verdict === 'stop' ? `stop${s} this plan` : `ask${s} for care`;
  return (
    <p className="margins-beyond">
      <VerdictWord verdict={plan.verdict} word={`${plan.verdict}: ${count} of the checks below ${does}`} />
    </p>
  );
}

function stateWords({ exactness, why }: Assessment, samples: number): string {
  if (why) return 'This cannot be solved as it stands.';
  if (exactness === 'full') return `Worst first; 5 in 100 fall below. Full figures, ${samples} trials.`;
  if (exactness === 'quick') return 'Quick figures; the spread is that of the last full run.';
  return 'Solving.';
}
