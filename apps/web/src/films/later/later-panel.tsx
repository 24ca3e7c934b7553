/** One later film: what it is, three points, the plan laid over it, its pins and its alignment against the plan. */
import { type CaseState, type FilmSet, type FilmState, occasionOf } from '@bonewright/casebook';
import type { Towards } from '@bonewright/film';
import { useRef } from 'react';
import { Choice } from '../../form/choice.tsx';
import { FieldWhy } from '../../form/field.tsx';
import type { Append } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import { capital } from '../../words/patient.ts';
import { moment } from '../../words/time.ts';
import { asCorrected } from '../correct/corrections.ts';
import { useOpenFilm } from '../engine/use-open-film.ts';
import type { FourClicks } from '../marks/working.ts';
import { sidesOf } from '../marks/working.ts';
import { FilmPlate } from '../plate/film-plate.tsx';
import { LineSamples } from '../plate/plate-help.tsx';
import type { LinkedLevels } from '../plate/use-levels.ts';
import { filmOfView } from '../trace/use-joining.ts';
import { AlignmentTable } from './alignment-table.tsx';
import { AxisDrawn } from './axis-drawn.tsx';
import { OCCASION_CHOICES, setName } from './occasion-words.ts';
import { PinsTable } from './pins-table.tsx';
import { PlanOverlay } from './plan-overlay.tsx';
import { PointList } from './point-list.tsx';
import { PointMarks } from './point-marks.tsx';
import { useAxis } from './use-axis.ts';
import { useFoundPins } from './use-found-pins.ts';
import { usePlacing } from './use-placing.ts';
import type { PlanInViews } from './use-plan-figure.ts';
import { useTraceByPlan } from './use-trace-by-plan.ts';

interface LaterPanelProps {
  readonly state: CaseState;
  readonly set: FilmSet;
  readonly film: FilmState;
  readonly plan: PlanInViews | null;
  readonly linked: LinkedLevels;
  readonly append: Append;
}

export function LaterPanel(props: LaterPanelProps) {
  const { film, plan } = props;
  const view = film.view.value;
  const towards = useTowards(props);
  const facts = <FilmFacts {...props} towards={towards.value} onTowards={towards.set} />;
  if (!view || !plan) return <Alone {...props} facts={facts} isPlanned={plan !== null} />;
  return <AgainstPlan {...props} plan={plan} view={view} towards={towards.value} facts={facts} />;
}

const NO_CLICKS: FourClicks = [null, null, null, null];

function clicksOf({ clicks }: FilmState): FourClicks {
  const [proximal, distal] = clicks?.value.segments ?? [];
  if (!proximal || !distal) return NO_CLICKS;
  return [proximal.from, proximal.to, distal.from, distal.to];
}

const readTowards = (kept: unknown): Towards | null =>
  kept === 'medial' || kept === 'lateral' || kept === 'cranial' || kept === 'caudal' ? kept : null;

/** Which side lies to the right: as said here, as recorded, else as on the film of before of the same view. */
function useTowards({ state, film }: LaterPanelProps) {
  const draft = useDraft(`later.towards.${film.filmId}`, readTowards);
  const view = film.view.value;
  const before = view
    ? filmOfView(
        state.films.filter((one) => occasionOf(state, one) === 'before'),
        view,
      )
    : null;
  const said = draft.value ?? film.clicks?.value.columnTowards ?? before?.clicks?.value.columnTowards ?? null;
  const fits = view !== null && said !== null && sidesOf(view).includes(said);
  return { value: fits ? said : null, set: draft.set };
}

interface FilmFactsProps extends LaterPanelProps {
  readonly towards: Towards | null;
  readonly onTowards: (towards: Towards) => void;
}

function FilmFacts({ state, film, towards, onTowards, append }: FilmFactsProps) {
  const { filmId } = film;
  const view = film.view.value;
  return (
    <div className="later-facts">
      <Choice
        label="Taken"
        options={OCCASION_CHOICES}
        value={occasionOf(state, film)}
        onChange={(occasion) => append([{ kind: 'film-occasion-set', payload: { filmId, occasion } }])}
      />
      <Choice
        label="View"
        options={[
          ['craniocaudal', 'craniocaudal'],
          ['mediolateral', 'mediolateral'],
        ]}
        value={view}
        onChange={(next) => append([{ kind: 'film-view-set', payload: { filmId, view: next } }])}
      />
      {view && (
        <Choice
          label="To the right on the film"
          options={sidesOf(view).map((side) => [side, side] as const)}
          value={towards}
          onChange={onTowards}
        />
      )}
    </div>
  );
}

const nameOf = (set: FilmSet, film: FilmState): string =>
  `${film.view.value ?? film.file.value.fileName}, ${setName(set)}`;

function PanelHead({ set, film }: LaterPanelProps) {
  const { takenAt, fileName } = film.file.value;
  return (
    <header className="film-head">
      <h2>{capital(film.view.value ?? fileName)}</h2>
      <span className="quiet">{[setName(set), takenAt && `taken ${moment(takenAt)}`].filter(Boolean).join(' · ')}</span>
    </header>
  );
}

/** A film that nothing can be laid over yet: to look at, and to say what it is. */
function Alone(props: LaterPanelProps & { readonly facts: React.ReactNode; readonly isPlanned: boolean }) {
  const { film, linked, facts, isPlanned, set } = props;
  const opening = useOpenFilm(film.file.value.sha256, film.file.value.fileName);
  return (
    <>
      <section className="film later-film" aria-label={capital(nameOf(set, film))}>
        <PanelHead {...props} />
        {opening.kind === 'open' ? (
          <FilmPlate
            film={opening.film}
            name={nameOf(set, film)}
            marks={null}
            clicks={NO_CLICKS}
            trace={null}
            aim={null}
            busy={null}
            linked={linked}
            onTarget={() => undefined}
            onLeave={() => undefined}
            onStation={null}
            over={() => null}
          />
        ) : (
          <div className="plate plate-empty">
            {opening.kind === 'failed' ? <FieldWhy why={opening.why} /> : `Reading ${film.file.value.fileName}`}
          </div>
        )}
      </section>
      <div className="later-side">
        {facts}
        <p className="lead">
          {isPlanned
            ? 'Say which view it is, and the plan can be laid over it.'
            : 'There is no plan in this case to lay over the film. Choose one on the Plan stage.'}
        </p>
      </div>
    </>
  );
}

interface AgainstPlanProps extends LaterPanelProps {
  readonly plan: PlanInViews;
  readonly view: 'craniocaudal' | 'mediolateral';
  readonly towards: Towards | null;
  readonly facts: React.ReactNode;
}

function AgainstPlan(props: AgainstPlanProps) {
  const { state, set, film, plan, view, towards, linked, append, facts } = props;
  const { sha256, fileName } = film.file.value;
  const figure = plan.figures[view];
  const opening = useOpenFilm(sha256, fileName);
  const open = opening.kind === 'open' ? opening.film : null;
  const laying = usePlacing({ film, figure, towards, append });
  const { placing } = laying;
  const pins = useFoundPins(open, placing, figure, plan.fractureMm);
  const tracing = useTraceByPlan({ film, open, figure, placing, towards, append });
  const trace = asCorrected(film);
  const axis = useAxis(film, towards, append);
  const plate = useRef<HTMLElement>(null);
  const side = useRef<HTMLDivElement>(null);
  const toPlate = () => plate.current?.querySelector<HTMLElement>('[role=application]')?.focus();
  return (
    <>
      <section ref={plate} className="film later-film" aria-label={capital(nameOf(set, film))}>
        <PanelHead {...props} />
        {open ? (
          <FilmPlate
            film={open}
            name={nameOf(set, film)}
            marks={null}
            clicks={clicksOf(film)}
            trace={trace}
            aim={axis.aim ?? laying.aim}
            busy={tracing.isRunning ? 'finding the walls' : null}
            linked={linked}
            onTarget={(target) => laying.want(['click-1', 'click-2', 'click-3'].indexOf(target))}
            onLeave={() => side.current?.querySelector('button')?.focus()}
            onStation={null}
            over={(unit, onSay) => (
              <>
                {placing && <PlanOverlay figure={figure} placing={placing} rods={pins.rods} unit={unit} />}
                <AxisDrawn clicks={axis.clicks} unit={unit} />
                {/* A mark in the way of a click would take it. */}
                {!axis.isAsking && <PointMarks laying={laying} unit={unit} onSay={onSay} />}
              </>
            )}
          />
        ) : (
          <div className="plate plate-empty">
            {opening.kind === 'failed' ? <FieldWhy why={opening.why} /> : `Reading ${fileName}`}
          </div>
        )}
        <LaterLegend />
      </section>
      <div className="later-side">
        {facts}
        <section aria-labelledby="later-points-title">
          <h2 id="later-points-title">The plan over the film</h2>
          <div ref={side}>
            <PointList laying={laying} onAsk={toPlate} />
          </div>
        </section>
        {placing && (
          <section aria-labelledby="later-pins-title">
            <h2 id="later-pins-title">Pins against the plan</h2>
            <PinsTable {...{ state, plan, view, fileName, append }} against={pins.against} />
          </section>
        )}
        <section aria-labelledby="later-alignment-title">
          <h2 id="later-alignment-title">Alignment, before and after</h2>
          {tracing.start && (
            <p className="later-act">
              <button type="button" className="button" disabled={tracing.isRunning} onClick={tracing.start}>
                {trace ? 'Trace the walls again' : 'Trace the walls'}
              </button>
              <button
                type="button"
                className="button"
                disabled={!towards}
                aria-pressed={axis.isAsking}
                onClick={() => {
                  if (axis.isAsking) return axis.stop();
                  axis.start();
                  toPlate();
                }}
              >
                Click the middle of both fragments
              </button>
              <span className="caption">
                {film.calibration
                  ? 'Scale as calibrated on this film.'
                  : "Scale taken from the plan: angles and shifts are this film's own, the length is not."}
              </span>
            </p>
          )}
          {placing && !towards && (
            <p className="quiet">Say which side lies to the right, and the walls can be traced.</p>
          )}
          {tracing.why && <FieldWhy why={tracing.why} />}
          <AlignmentTable state={state} set={set} />
        </section>
      </div>
    </>
  );
}

const LINES = [
  ['plan', 'var(--straw)', undefined],
  ['bone as planned', 'var(--straw)', '2 3'],
  ['pin found', 'var(--mint)', undefined],
] as const;

function LaterLegend() {
  return (
    <p className="plate-help">
      <LineSamples lines={LINES} />
      <span>
        <kbd>1</kbd> to <kbd>3</kbd> place again, <kbd>Space</kbd> hides the marks
      </span>
    </p>
  );
}
