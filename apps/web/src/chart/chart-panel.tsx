/** The anaesthetic chart: how long since the last look, one press a reading, drawn live; blood, fluids and events beside it. */
import '../theatre/theatre.css';
import './chart.css';
import { type CaseState, chartSittings, mayRecord } from '@bonewright/casebook';
import { PrintPapers } from '../papers/print-papers.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { useNow } from '../theatre/use-now.ts';
import { BloodLost } from './blood-lost.tsx';
import { ChartDrawing } from './chart-drawing.tsx';
import { EventButtons } from './event-buttons.tsx';
import { FluidsGiven } from './fluids-given.tsx';
import { ReadingForm } from './reading-form.tsx';
import { ReadingList } from './reading-list.tsx';
import { SinceLast } from './since-last.tsx';
import { sittingNow } from './sitting-now.ts';
import { UsualBehind } from './usual-behind.tsx';

interface ChartPanelProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function ChartPanel({ state, append }: ChartPanelProps) {
  const now = useNow();
  const role = useRole();
  const sittings = chartSittings(state);
  const sitting = sittingNow(sittings, now);
  const shown = sitting ?? sittings.at(-1) ?? null;
  const species = state.patient?.value.species ?? '';
  return (
    <div className="chart">
      <div className="chart-main">
        <section aria-labelledby="chart-title" className="chart-drawn">
          <h3 id="chart-title" className="sr-only">
            Drawn
          </h3>
          <SinceLast sitting={sitting} now={now} />
          <ChartDrawing sitting={shown} species={species} now={sitting ? now : null} />
          <UsualBehind species={species} />
        </section>
        {mayRecord(role, 'reading-taken') && (
          <ReadingForm caseId={state.caseId} last={sitting?.readings.at(-1) ?? null} append={append} />
        )}
      </div>
      <EventButtons append={append} />
      <div className="chart-two">
        <BloodLost state={state} sitting={shown} append={append} />
        <FluidsGiven state={state} sitting={shown} append={append} />
      </div>
      <ReadingList sitting={shown} append={append} />
      <PrintPapers caseId={state.caseId} papers={[['chart', 'Print the chart']]} />
    </div>
  );
}
