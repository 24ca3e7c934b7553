/** The Rechecks stage: films side by side, union scored, what the frame still carries; each a section of its own. */
import '../stages/stages.css';
import '../films/films.css';
import '../films/later/later.css';
import '../plan/margins/margins.css';
import '../release/release.css';
import './rechecks.css';
import { type CaseState, laterFilmSets, type RecordedEvent } from '@bonewright/casebook';
import { healingSeries, type UnionScale } from '@bonewright/film';
import { useMemo, useState } from 'react';
import { Photographs } from '../care/photographs.tsx';
import { prepareThread } from '../films/engine/film-thread.ts';
import { Choice } from '../form/choice.tsx';
import { HereNow } from '../stages/here-now.tsx';
import { NotesAndStory } from '../stages/notes-and-story.tsx';
import type { Append } from '../sync/new-event.ts';
import { CortexScores } from './cortex-scores.tsx';
import { FilmSeries } from './film-series.tsx';
import { FrameOff } from './frame-off.tsx';
import { healingModel } from './healing.ts';
import { LimbUse } from './limb-use.tsx';
import { LoadShare } from './load-share.tsx';
import { NextRecheck } from './next-recheck.tsx';
import { PinSites } from './pin-sites.tsx';
import { Union } from './union.tsx';
import { WeightCurve } from './weight-curve.tsx';

interface RechecksStageProps {
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

prepareThread();

export function RechecksStage({ state, recorded, append }: RechecksStageProps) {
  const sets = useMemo(() => laterFilmSets(state), [state]);
  return (
    <div className="rechecks">
      <HereNow stage="rechecks" state={state} append={append} />
      {state.films.length > 0 && <FilmSeries state={state} sets={sets} />}
      {sets.some(({ day }) => day !== null) && <Healing {...{ state, sets, append }} />}
      <div className="stage-page">
        <div className="stage-column">
          <PinSites state={state} append={append} />
          <Photographs state={state} append={append} />
          <LimbUse state={state} append={append} />
          <NextRecheck state={state} append={append} />
        </div>
        <div className="stage-column">
          <WeightCurve recorded={recorded} />
          <FrameOff state={state} append={append} />
        </div>
      </div>
      <NotesAndStory stage="rechecks" {...{ state, recorded, append }} />
    </div>
  );
}

interface HealingProps extends Pick<RechecksStageProps, 'state' | 'append'> {
  readonly sets: ReturnType<typeof laterFilmSets>;
}

function Healing({ state, sets, append }: HealingProps) {
  const [scale, setScale] = useState<UnionScale>('mRUST');
  const series = useMemo(() => seriesOf(state, scale), [state, scale]);
  const model = useMemo(() => {
    const days = [...new Set(sets.flatMap(({ day }) => day ?? []))];
    return healingModel(state, days, seriesOf(state, 'mRUST').points);
  }, [state, sets]);
  return (
    <section aria-labelledby="scores-title" className="scores">
      <header className="series-head">
        <h2 id="scores-title">Union, cortex by cortex</h2>
        <span className="quiet">
          <kbd>1</kbd> to <kbd>{scale === 'RUST' ? '3' : '4'}</kbd> score the cortex in focus, <kbd>0</kbd> is not seen.
        </span>
        <div className="scores-scale">
          <Choice
            label="Scale"
            isLabelHidden
            options={[
              ['RUST', 'RUST'],
              ['mRUST', 'mRUST'],
            ]}
            value={scale}
            onChange={setScale}
          />
        </div>
      </header>
      <CortexScores {...{ state, sets, scale, append }} />
      <div className="scores-meaning">
        <Union series={series} />
        {model ? (
          <LoadShare model={model} />
        ) : (
          <p className="quiet">Without a plan in this case the healing model has nothing to say.</p>
        )}
      </div>
    </section>
  );
}

const seriesOf = (state: CaseState, scale: UnionScale) =>
  healingSeries(
    scale,
    state.scores.filter(({ value }) => value.scale === scale).map(({ value: { day, scores } }) => ({ day, scores })),
  );
