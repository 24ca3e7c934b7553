/** Doses of a case: those that stand, large enough to draw up from; the papers; and, for a vet, a new one. */
import './doses.css';
import type { CaseState } from '@bonewright/casebook';
import { PrintPapers } from '../papers/print-papers.tsx';
import type { Append } from '../sync/new-event.ts';
import { useCanSignDoses } from './can-sign-doses.ts';
import { DoseCard } from './dose-card.tsx';
import { DoseForm } from './dose-form.tsx';
import { LocalTotalWords } from './local-total-words.tsx';
import { ReversalWords } from './reversal-words.tsx';

const PAPERS = [
  ['doses', 'Dose sheet'],
  ['emergency', 'Emergency sheet'],
] as const;

interface DosesPanelProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function DosesPanel({ state, append }: DosesPanelProps) {
  const canSign = useCanSignDoses();
  const standing = state.doses.filter(({ voided }) => voided === null);
  const voided = state.doses.filter((dose) => dose.voided !== null);
  return (
    <div className="doses">
      <p className="caption">
        No dose is chosen here. A vet reads the figures, decides and signs; local law and the data sheet come first.
      </p>
      {standing.length === 0 ? (
        <p className="quiet">No dose is signed for this patient yet.</p>
      ) : (
        <ul className="dose-cards" aria-label="Doses">
          {standing.map((dose) => (
            <DoseCard key={dose.doseId} dose={dose} append={append} />
          ))}
        </ul>
      )}
      <LocalTotalWords state={state} />
      <ReversalWords state={state} />
      <PrintPapers caseId={state.caseId} papers={PAPERS} />
      {canSign && <DoseForm state={state} append={append} />}
      {voided.length > 0 && (
        <details>
          <summary>Voided: {voided.length}</summary>
          <ul className="dose-cards">
            {voided.map((dose) => (
              <DoseCard key={dose.doseId} dose={dose} append={append} />
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
