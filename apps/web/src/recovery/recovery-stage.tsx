/** The Recovery stage: what carers do and write down every day, the doses that stand, the aftercare that goes home. */
import '../stages/stages.css';
import './recovery.css';
import { type CaseState, mayRecord, type RecordedEvent } from '@bonewright/casebook';
import { Feed } from '../care/feed.tsx';
import { Photographs } from '../care/photographs.tsx';
import { Questions } from '../care/questions.tsx';
import { Weigh } from '../care/weigh.tsx';
import { ChartPanel } from '../chart/chart-panel.tsx';
import { DosesPanel } from '../doses/doses-panel.tsx';
import { FeedPlanner } from '../fluids/feed-planner.tsx';
import { FluidPlanner } from '../fluids/fluid-planner.tsx';
import { HereNow } from '../stages/here-now.tsx';
import { NotesAndStory } from '../stages/notes-and-story.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { Aftercare } from './aftercare.tsx';
import { Watch } from './watch.tsx';

interface RecoveryStageProps {
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

export function RecoveryStage({ state, recorded, append }: RecoveryStageProps) {
  const isOfTheWard = mayRecord(useRole(), 'dose-proposed');
  return (
    <div className="stage">
      <HereNow stage="recovery" state={state} append={append} />
      {isOfTheWard && (
        <>
          <Watch state={state} append={append} />
          <details className="recovery-chart">
            <summary>Chart: readings, events, fluids given</summary>
            <ChartPanel state={state} append={append} />
          </details>
        </>
      )}
      <div className="stage-page">
        <div className="stage-column">
          {!isOfTheWard && <Aftercare state={state} append={append} />}
          <Weigh state={state} append={append} />
          <Feed state={state} append={append} />
          <Photographs state={state} append={append} />
          <Questions state={state} append={append} />
          {isOfTheWard && (
            <>
              <FluidPlanner state={state} append={append} />
              <FeedPlanner state={state} append={append} />
            </>
          )}
        </div>
        {isOfTheWard && (
          <div className="stage-column">
            <section aria-labelledby="doses-title">
              <h2 id="doses-title">Doses</h2>
              <DosesPanel state={state} append={append} />
            </section>
            <Aftercare state={state} append={append} />
          </div>
        )}
      </div>
      <NotesAndStory stage="recovery" {...{ state, recorded, append }} />
    </div>
  );
}
