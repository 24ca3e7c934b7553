/** The Release stage: whether it is ready, by which limits, when it gets dark, that it went, what became of it. */
import '../stages/stages.css';
import '../films/later/later.css';
import '../plan/margins/margins.css';
import './release.css';
import type { CaseState, RecordedEvent } from '@bonewright/casebook';
import { readinessFor, speciesName } from '@bonewright/ward';
import { PrintPapers } from '../papers/print-papers.tsx';
import { HereNow } from '../stages/here-now.tsx';
import { NotesAndStory } from '../stages/notes-and-story.tsx';
import type { Append } from '../sync/new-event.ts';
import { Afterwards } from './afterwards.tsx';
import { Condition } from './condition.tsx';
import { Evening } from './evening.tsx';
import { GoingBack } from './going-back.tsx';
import { Limits } from './limits.tsx';
import { ReadinessList } from './readiness-list.tsx';
import { Season } from './season.tsx';

const PAPERS = [
  ['release', 'Release sheet'],
  ['referral-back', 'Referral back'],
  ['rescue-report', 'Report to the rescue'],
  ['finder-thanks', 'Thank-you to the finder'],
] as const;

interface ReleaseStageProps {
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

export function ReleaseStage({ state, recorded, append }: ReleaseStageProps) {
  const species = state.patient?.value.species ?? '';
  const isHedgehog = speciesName(species) === 'hedgehog';
  return (
    <div className="stage">
      <HereNow stage="release" state={state} append={append} />
      <div className="stage-page">
        <div className="stage-column">
          <ReadinessList title="Ready to go back" items={readinessFor(species)} state={state} append={append} />
          {isHedgehog && <Condition state={state} append={append} />}
          <section aria-labelledby="papers-title">
            <h2 id="papers-title">Papers</h2>
            <PrintPapers caseId={state.caseId} papers={PAPERS} />
          </section>
          <Afterwards state={state} append={append} />
        </div>
        <div className="stage-column">
          <Limits state={state} append={append} />
          <Season state={state} />
          <Evening state={state} append={append} />
          <GoingBack state={state} append={append} />
        </div>
      </div>
      <NotesAndStory stage="release" {...{ state, recorded, append }} />
    </div>
  );
}
