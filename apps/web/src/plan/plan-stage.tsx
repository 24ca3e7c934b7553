/** The Plan stage: what stands in the record is planned here and written back. */
import './plan.css';
import type { CaseState } from '@bonewright/casebook';
import type { Case, LoadName } from '@bonewright/construct';
import { useEffect, useState } from 'react';
import { ColumnBenchTest } from '../bench-test/column-bench-test.tsx';
import { Patterns } from '../drawing/patterns.tsx';
import type { Append } from '../sync/new-event.ts';
import { StockDrawer } from './drawer/stock-drawer.tsx';
import { startEngine } from './engine/engine.ts';
import { useFirstSearch } from './engine/use-first-search.ts';
import { useLongJobs } from './engine/use-long-jobs.ts';
import { useSearch } from './engine/use-search.ts';
import { useTrials } from './engine/use-trials.ts';
import type { FilmPicture } from './films/reduced-picture.tsx';
import { marginId } from './margins/margin-list.tsx';
import { Why } from './margins/why.tsx';
import { Missing } from './missing.tsx';
import { drawerSet, plansRanked, usePlannedCase } from './planned-case.ts';
import { Planner } from './planner.tsx';
import { Reading } from './reading.tsx';
import { resultSays } from './ruler/says.ts';
import { useIsNarrow } from './use-is-narrow.ts';
import { usePlan } from './use-plan.ts';

export interface PlanStageProps {
  readonly state: CaseState;
  readonly append: Append;
  /** Films as pictures, by film id; those not loaded yet are absent. */
  readonly films: ReadonlyMap<string, FilmPicture>;
}

export function PlanStage(props: PlanStageProps) {
  const { patientCase, missing, isStartDrawer } = usePlannedCase(props.state);
  if (!patientCase) return <Missing caseId={props.state.caseId} sentences={missing} />;
  return <Stage {...props} patientCase={patientCase} isStartDrawer={isStartDrawer} />;
}

interface StageProps extends PlanStageProps {
  readonly patientCase: Case;
  readonly isStartDrawer: boolean;
}

function Stage({ state, append, films, patientCase, isStartDrawer }: StageProps) {
  const [engine] = useState(startEngine);
  useEffect(() => engine.close, [engine]);
  const [wantedPin, select] = useState(0);
  const renumber = (places: readonly number[]) => {
    const place = places[wantedPin] ?? 0;
    select(place);
    if (document.activeElement?.matches('[data-pin]'))
      requestAnimationFrame(() => document.querySelector<SVGGElement>(`[data-pin="${place}"]`)?.focus());
  };
  const { history, assessment, keepNow } = usePlan(engine, state, patientCase, append, renumber);
  const search = useSearch(engine);
  const settled = assessment.exactness === 'full' ? assessment.construct : null;
  const long = useLongJobs(engine, patientCase, settled);
  const [opened, open] = useState<LoadName | null>(null);
  const trials = useTrials(engine, patientCase, settled, opened);
  const [dialog, openDialog] = useState<'drawer' | 'bench test' | null>(null);
  const closeDialog = () => openDialog(null);
  const isNarrow = useIsNarrow();
  const { construct } = history;
  const { plan } = assessment;
  const rank = async () => {
    const ranking = await search.run(patientCase);
    if (!ranking) return;
    append([...(state.drawer ? [] : [drawerSet(patientCase.drawer)]), plansRanked(ranking)]);
  };
  useFirstSearch(state, rank);
  if (!construct)
    return <Missing caseId={state.caseId} sentences={['The drawer needs at least one pin and one column.']} />;

  const selected = Math.min(wantedPin, construct.pins.length - 1);
  const improve = ({ construct: better }: { readonly construct: typeof construct | null }) => {
    if (better) history.change(better);
  };
  const shared = { state, append, keepNow, films, patientCase, construct, assessment, selected, onOpen: open };
  return (
    <div className="plan-stage">
      <Patterns />
      <p className="sr-only" role="status">
        {plan && assessment.exactness === 'full' ? resultSays(construct, plan, selected) : ''}
      </p>
      {opened && plan ? (
        <Why
          patientCase={patientCase}
          plan={plan}
          load={opened}
          trials={trials}
          improvements={long.improvements}
          onApply={improve}
          onBack={() => {
            open(null);
            requestAnimationFrame(() => document.getElementById(marginId(opened))?.focus());
          }}
        />
      ) : isNarrow ? (
        <Reading {...shared} />
      ) : (
        <Planner
          {...shared}
          history={history}
          long={long}
          search={search}
          isStartDrawer={isStartDrawer}
          onSelect={select}
          onRank={rank}
          onDrawer={() => openDialog('drawer')}
          onBenchTest={() => openDialog('bench test')}
          onApply={improve}
        />
      )}
      {dialog === 'bench test' && <ColumnBenchTest drawer={patientCase.drawer} append={append} onClose={closeDialog} />}
      {dialog === 'drawer' && (
        <StockDrawer
          patientDrawer={patientCase.drawer}
          isStart={isStartDrawer}
          onKeep={(drawer) => append([drawerSet(drawer)])}
          onClose={closeDialog}
        />
      )}
    </div>
  );
}
