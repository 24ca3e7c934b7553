/** The one thing to do next, at the right of the head. */
import type { CaseState, Stage } from '@bonewright/casebook';
import { Link } from 'wouter';

interface HeadActionProps {
  readonly state: CaseState;
  readonly stage: Stage;
}

export function HeadAction({ state, stage }: HeadActionProps) {
  const isOperated = state.theatre.pins.some(({ placed }) => placed !== null);
  if (stage === 'plan' || stage === 'theatre' || isOperated) return null;
  if (stage === 'admission' || state.films.length === 0) {
    return stage === 'films' ? null : (
      <Link href={`/case/${state.caseId}/films`} className="button button-main">
        Films
      </Link>
    );
  }
  const isReady = state.bone !== null && state.fracture !== null;
  // On the films themselves the way on is the description's own button, which records it first.
  if (stage === 'films' && !isReady) return null;
  return (
    <Link href={`/case/${state.caseId}/plan`} className={isReady ? 'button button-main' : 'button'}>
      Make a plan
    </Link>
  );
}
