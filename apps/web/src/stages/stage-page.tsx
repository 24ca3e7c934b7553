/** A stage that has no tools of its own yet: what the record holds so far, and a note to add. Nothing is made up. */
import './stages.css';
import type { CaseState, RecordedEvent, Stage } from '@bonewright/casebook';
import { DosesPanel } from '../doses/doses-panel.tsx';
import type { Append } from '../sync/new-event.ts';
import { capital } from '../words/patient.ts';
import { AddNote } from './add-note.tsx';
import { HereNow } from './here-now.tsx';
import { Story } from './story.tsx';

interface StagePageProps {
  readonly stage: Stage;
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

/** What will be done here, as the trade says it. */
const WORK: Readonly<Record<Stage, string>> = {
  admission: '',
  films: '',
  plan: '',
  theatre: 'Pins go in one by one; what was placed where belongs in the record.',
  recovery: 'The first 48 hours: warmth, fluids, food, pain, the pins.',
  rechecks: 'Pin sites, weight, use of the limb, films until the bone is whole.',
  release: 'Whether it is ready, when and where it goes back, and what became of it.',
};

export function StagePage({ stage, state, recorded, append }: StagePageProps) {
  return (
    <div className="stage-page">
      <section aria-labelledby="stage-title">
        <h2 id="stage-title">{capital(stage)}</h2>
        <p className="lead">{WORK[stage]}</p>
        {stage === 'recovery' && <DosesPanel {...{ state, append }} />}
        {stage !== 'admission' && stage !== 'recovery' && (
          <p className="stage-honest">
            There are no tools for this stage in this version. Notes written here are signed, dated and kept with the
            case.
          </p>
        )}
        <HereNow stage={stage} state={state} append={append} />
        <AddNote stage={stage} caseId={state.caseId} append={append} />
      </section>
      <Story recorded={recorded} />
    </div>
  );
}
