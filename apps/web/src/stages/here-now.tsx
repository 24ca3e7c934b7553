/** Says that the patient has come to this stage, where the record does not say so yet. */
import { type CaseState, mayRecord, STAGES, type Stage, stageOf } from '@bonewright/casebook';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';

interface HereNowProps {
  readonly stage: Stage;
  readonly state: CaseState;
  readonly append: Append;
}

export function HereNow({ stage, state, append }: HereNowProps) {
  const role = useRole();
  const isAhead = STAGES.indexOf(stage) > STAGES.indexOf(stageOf(state));
  if (!isAhead || !mayRecord(role, 'stage-entered')) return null;
  return (
    <p>
      <button type="button" className="button" onClick={() => append([{ kind: 'stage-entered', payload: { stage } }])}>
        The patient is here now
      </button>
    </p>
  );
}
