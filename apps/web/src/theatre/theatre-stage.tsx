/** The Theatre stage: pin by pin, then putty and counts. Everything entered is an entry of the record at once. */
import '../stages/stages.css';
import './theatre.css';
import '../plan/ruler/ruler.css';
import '../plan/margins/margins.css';
import { type CaseState, chartSittings, type RecordedEvent, STAGES, stageOf } from '@bonewright/casebook';
import { type Case, type Construct, constructSchema, frameFacts } from '@bonewright/construct';
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { ChartPanel } from '../chart/chart-panel.tsx';
import { chartButtonWords } from '../chart/since-last.tsx';
import { sittingNow } from '../chart/sitting-now.ts';
import { ChecksPanel } from '../checks/checks-panel.tsx';
import { DosesPanel } from '../doses/doses-panel.tsx';
import { Patterns } from '../drawing/patterns.tsx';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { startEngine } from '../plan/engine/engine.ts';
import { goneFromDrawer, usePlannedCase } from '../plan/planned-case.ts';
import { useDimRoom } from '../shell/theme.ts';
import { AddNote } from '../stages/add-note.tsx';
import { Story } from '../stages/story.tsx';
import type { Append } from '../sync/new-event.ts';
import { isOtherPlan } from './in-theatre.ts';
import { PinByPin } from './pin-by-pin.tsx';
import { PuttyWords } from './putty-words.tsx';
import { TableSide } from './table-side.tsx';
import { TheatreHead } from './theatre-head.tsx';
import { useNow } from './use-now.ts';
import { useStockCount } from './use-stock-count.ts';

export interface TheatreStageProps {
  readonly state: CaseState;
  readonly append: Append;
  readonly recorded: readonly RecordedEvent[];
}

const SIDES = ['pins', 'chart', 'checks', 'doses', 'table', 'notes'] as const;
type Side = (typeof SIDES)[number];

export function TheatreStage({ state, append, recorded }: TheatreStageProps) {
  useDimRoom();
  useStockCount(state);
  const [side, show] = useState<Side>('pins');
  const { patientCase } = usePlannedCase(state);
  const chosen = state.construct;
  const construct = useMemo(() => (chosen ? constructSchema.parse(chosen.value.construct) : null), [chosen]);
  const gone = construct && patientCase ? goneFromDrawer(construct, patientCase.drawer) : null;
  const usable = patientCase && construct && !gone ? { patientCase, construct } : null;
  const nav = <Sides {...{ state, side, show }} />;
  return (
    <div className="theatre">
      <Patterns />
      {isOtherPlan(state) && (
        <div className="callout callout-watch">
          <strong>
            <VerdictMark verdict="watch" />
            The plan was changed after pins went in.
          </strong>
          Look whether the numbers still mean the same pins.
        </div>
      )}
      {side === 'pins' && usable ? (
        <WithPlan {...usable} {...{ state, append, nav }} onTable={() => show('table')} />
      ) : (
        <>
          <TheatreHead title={SIDE_WORDS[side]} nav={nav} />
          {side === 'pins' && <NoPlan caseId={state.caseId} because={gone} />}
          {side === 'chart' && <ChartPanel {...{ state, append }} />}
          {side === 'checks' && <ChecksPanel {...{ state, append }} onCounts={() => show('table')} />}
          {side === 'doses' && <DosesPanel {...{ state, append }} />}
          {side === 'table' && (
            <TableSide {...{ state, append }} columnG={usable && columnMassG(usable.patientCase, usable.construct)} />
          )}
          {side === 'notes' && <Notes {...{ state, append, recorded }} />}
        </>
      )}
    </div>
  );
}

/** Of all columns of the plan together. */
const columnMassG = (patientCase: Case, construct: Construct): number =>
  frameFacts(patientCase, construct).columnMassesG.reduce((sum, massG) => sum + massG, 0);

interface SidesProps {
  readonly state: CaseState;
  readonly side: Side;
  readonly show: (side: Side) => void;
}

function Sides({ state, side, show }: SidesProps) {
  const now = useNow();
  const chartWords = chartButtonWords(sittingNow(chartSittings(state), now), now);
  return (
    <>
      <PuttyWords theatre={state.theatre} />
      <nav aria-label="Theatre" className="theatre-sides">
        {SIDES.map((each) => (
          <button key={each} type="button" className="button" aria-pressed={side === each} onClick={() => show(each)}>
            {each === 'chart' ? chartWords : SIDE_WORDS[each]}
          </button>
        ))}
        <Link href={`/case/${state.caseId}/films?later`} className="button">
          Compare films
        </Link>
      </nav>
    </>
  );
}

const SIDE_WORDS: Readonly<Record<Side, string>> = {
  pins: 'Pins',
  chart: 'Chart',
  checks: 'Checks',
  doses: 'Doses',
  table: 'Putty and counts',
  notes: 'Notes',
};

function Notes({ state, append, recorded }: TheatreStageProps) {
  const isAhead = STAGES.indexOf('theatre') > STAGES.indexOf(stageOf(state));
  return (
    <div className="theatre-two">
      <section aria-label="Notes of theatre" className="theatre-column">
        {isAhead && (
          <button
            type="button"
            className="button"
            onClick={() => append([{ kind: 'stage-entered', payload: { stage: 'theatre' } }])}
          >
            The patient is here now
          </button>
        )}
        <AddNote stage="theatre" caseId={state.caseId} append={append} />
      </section>
      <Story recorded={recorded} />
    </div>
  );
}

interface WithPlanProps extends Pick<TheatreStageProps, 'state' | 'append'> {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly nav: ReactNode;
  readonly onTable: () => void;
}

function WithPlan(props: WithPlanProps) {
  const [engine] = useState(startEngine);
  useEffect(() => engine.close, [engine]);
  return <PinByPin {...props} engine={engine} planned={props.construct} />;
}

/** Without a plan the work goes on: putty, counts and notes need none. */
function NoPlan({ caseId, because }: { readonly caseId: string; readonly because: string | null }) {
  return (
    <section aria-labelledby="no-plan-title" className="theatre-none">
      <h3 id="no-plan-title">No plan to go by</h3>
      <p>{because ?? 'Choose a plan, and the pins stand here one by one. Putty and counts need none.'}</p>
      <Link href={`/case/${caseId}/plan`} className="button button-main">
        To the plan
      </Link>
    </section>
  );
}
