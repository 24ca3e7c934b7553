/** The planner's spread: plans, films, space and ruler at the left, what they mean at the right. */
import { type CaseState, filmsBefore, outOfDate, summarisePlan } from '@bonewright/casebook';
import type { Case, Construct, LoadName } from '@bonewright/construct';
import { memo, useMemo, useRef } from 'react';
import { place } from '../drawing/geometry/placement.ts';
import type { Append } from '../sync/new-event.ts';
import type { ConstructHistory } from './edit/use-history.ts';
import type { Improvement } from './engine/answers.ts';
import type { Assessment } from './engine/use-assessment.ts';
import type { LongAnswers } from './engine/use-long-jobs.ts';
import type { SearchState } from './engine/use-search.ts';
import { FilmsPanel } from './films/films-panel.tsx';
import type { FilmPicture } from './films/reduced-picture.tsx';
import { MarginsPanel } from './margins/margins-panel.tsx';
import { Reasons } from './margins/reasons.tsx';
import { cardsOf } from './planned-case.ts';
import { RankingPanel } from './ranking/ranking.tsx';
import { RulerPanel } from './ruler/ruler-panel.tsx';
import { SheetButton } from './sheet/sheet-button.tsx';
import { SpaceView } from './space/space-view.tsx';
import { useStable } from './use-stable.ts';

/** What both the planner and its reading form show. */
export interface PlanShown {
  readonly state: CaseState;
  readonly append: Append;
  readonly keepNow: () => void;
  readonly films: ReadonlyMap<string, FilmPicture>;
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly assessment: Assessment;
  readonly selected: number;
  readonly onOpen: (load: LoadName) => void;
}

interface PlannerProps extends PlanShown {
  readonly history: ConstructHistory;
  readonly long: LongAnswers;
  readonly search: SearchState;
  readonly isStartDrawer: boolean;
  readonly onSelect: (index: number) => void;
  readonly onRank: () => void;
  readonly onDrawer: () => void;
  readonly onBenchTest: () => void;
  readonly onApply: (improvement: Improvement) => void;
}

/** Only what shows the moving pin is drawn again with each move; the rest waits until the hand rests. */
export function Planner(props: PlannerProps) {
  const { state, films, patientCase, construct, assessment, selected, history, long, append } = props;
  const placement = useMemo(() => place(patientCase, construct), [patientCase, construct]);
  const { plan } = assessment;
  const onKeep = useStable(props.keepNow);
  const constructNow = useStable(() => construct);
  const sheet = useMemo(
    () => <SheetButton {...{ state, patientCase, constructNow, append, onKeep }} />,
    [state, patientCase, constructNow, append, onKeep],
  );
  const { search, isStartDrawer } = props;
  return (
    <div className="planner">
      <Plans
        {...{ state, patientCase, search, isStartDrawer }}
        construct={useAtRest(construct, history.isMoving)}
        change={history.change}
        onRank={useStable(props.onRank)}
        onDrawer={useStable(props.onDrawer)}
        onBenchTest={useStable(props.onBenchTest)}
      />
      <FilmsPanel
        films={filmsBefore(state)}
        pictures={films}
        reduction={state.reduction?.value.move}
        patientCase={patientCase}
        placement={placement}
        selected={selected}
      />
      <SpaceView patientCase={patientCase} placement={placement} selected={selected} />
      <MarginsPanel assessment={assessment} samples={patientCase.samples} onOpen={props.onOpen}>
        {sheet}
      </MarginsPanel>
      <RulerPanel {...{ patientCase, construct, placement, plan, selected, history }} onSelect={props.onSelect} />
      <Reasons
        plan={useAtRest(plan, assessment.exactness === 'quick' && history.isMoving)}
        long={long}
        onApply={useStable(props.onApply)}
      />
    </div>
  );
}

/** As it was before the hand took hold, until it rests. */
function useAtRest<T>(value: T, isMoving: boolean): T {
  const rested = useRef(value);
  if (!isMoving) rested.current = value;
  return rested.current;
}

interface PlansProps extends Pick<PlannerProps, 'state' | 'patientCase' | 'search' | 'isStartDrawer'> {
  readonly construct: Construct;
  readonly change: ConstructHistory['change'];
  readonly onRank: () => void;
  readonly onDrawer: () => void;
  readonly onBenchTest: () => void;
}

const Plans = memo((props: PlansProps) => {
  const { state, patientCase, construct, search, isStartDrawer, change, onRank, onDrawer, onBenchTest } = props;
  const soFar = search.soFar?.plans.map(summarisePlan);
  return (
    <div className="planner-plans">
      <RankingPanel
        cards={cardsOf(soFar ?? state.ranking?.value.plans ?? [], patientCase.drawer, construct)}
        candidates={state.ranking?.value.candidates ?? null}
        nearest={state.ranking?.value.nearest ?? null}
        search={search}
        stale={staleWords(state)}
        onRank={onRank}
        onChoose={(card) => change(card.construct)}
      >
        <button type="button" className="button" onClick={onDrawer}>
          {isStartDrawer ? 'Check drawer' : 'Drawer'}
        </button>
        <button type="button" className="button" onClick={onBenchTest}>
          Bench test
        </button>
      </RankingPanel>
      {isStartDrawer && <p className="quiet">Common sizes stand in until you say what the drawer holds.</p>}
    </div>
  );
});

/** What the plans on the cards, or the one shown, were made before; null where all is of now. */
function staleWords(state: CaseState): string | null {
  const stale = outOfDate(state).find(({ part }) => part === 'ranking' || part === 'construct');
  if (!stale) return null;
  return `${stale.part === 'ranking' ? 'Ranked' : 'Chosen'} before this: ${stale.because}. Rank again.`;
}
