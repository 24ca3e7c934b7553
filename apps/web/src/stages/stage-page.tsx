/** A stage that has no tools of its own yet: what the record holds so far, and a note to add. Nothing is made up. */
import './stages.css';
import { type CaseState, type RecordedEvent, STAGES, type Stage, stageOf } from '@bonewright/casebook';
import { DosesPanel } from '../doses/doses-panel.tsx';
import type { Append } from '../sync/new-event.ts';
import { capital } from '../words/patient.ts';
import { AddNote } from './add-note.tsx';
import { PatientFacts } from './patient-facts.tsx';
import { Story } from './story.tsx';

interface StagePageProps {
  readonly stage: Stage;
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

/** What will be done here, as the trade says it. */
const WORK: Readonly<Record<Stage, string>> = {
  admission: 'Who the patient is, what it weighs, which bone is broken.',
  films: '',
  plan: '',
  theatre: 'Pins go in one by one; what was placed where belongs in the record.',
  recovery: 'The first 48 hours: warmth, fluids, food, pain, the pins.',
  rechecks: 'Pin sites, weight, use of the limb, films until the bone is whole.',
  release: 'Whether it is ready, when and where it goes back, and what became of it.',
};

export function StagePage({ stage, state, recorded, append }: StagePageProps) {
  const isAhead = STAGES.indexOf(stage) > STAGES.indexOf(stageOf(state));
  return (
    <div className="stage-page">
      <section aria-labelledby="stage-title">
        <h2 id="stage-title">{capital(stage)}</h2>
        <p className="lead">{WORK[stage]}</p>
        {stage === 'admission' && <PatientFacts state={state} append={append} />}
        {stage === 'recovery' && <DosesPanel {...{ state, append }} />}
        {stage !== 'admission' && stage !== 'recovery' && (
          <p className="stage-honest">
            There are no tools for this stage in this version. Notes written here are signed, dated and kept with the
            case.
          </p>
        )}
        {isAhead && (
          <p>
            <button
              type="button"
              className="button"
              onClick={() => append([{ kind: 'stage-entered', payload: { stage } }])}
            >
              The patient is here now
            </button>
          </p>
        )}
        <AddNote stage={stage} caseId={state.caseId} append={append} />
      </section>
      <Story recorded={recorded} />
    </div>
  );
}
