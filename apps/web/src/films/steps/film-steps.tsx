/** What one film needs before it can be measured, in order; each line says what it holds and can be done again. */
import type { FilmState, View } from '@bonewright/casebook';
import type { Trace } from '@bonewright/film';
import { VerdictMark } from '../../drawing/verdict-mark.tsx';
import { Choice } from '../../form/choice.tsx';
import { FieldWhy } from '../../form/field.tsx';
import type { Append } from '../../sync/new-event.ts';
import { capital } from '../../words/patient.ts';
import { CorrectStep } from '../correct/correct-step.tsx';
import type { Correcting } from '../correct/use-correcting.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { placeOf, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import { sidesOf } from '../marks/working.ts';
import { MeasureStep } from '../measures/measure-step.tsx';
import type { Measures } from '../measures/use-measures.ts';
import type { FilmScale } from '../measures/use-scale.ts';
import type { Tracing } from '../trace/use-tracing.ts';
import { HeaderFacts } from './header-facts.tsx';
import { ScaleStep } from './scale-step.tsx';
import { Step } from './step.tsx';

interface FilmStepsProps {
  readonly film: FilmState;
  readonly open: OpenFilm;
  readonly marks: Marks;
  readonly tracing: Tracing;
  readonly measures: Measures;
  /** Null where there is nothing to correct. */
  readonly correcting: Correcting | null;
  readonly scale: FilmScale;
  readonly target: Target | null;
  readonly onTarget: (target: Target) => void;
  readonly append: Append;
}

const VIEWS: readonly (readonly [View, string])[] = [
  ['craniocaudal', 'craniocaudal'],
  ['mediolateral', 'mediolateral'],
];
const CLICKS: readonly Target[] = ['click-1', 'click-2', 'click-3', 'click-4'];

export function FilmSteps({
  film,
  open,
  marks,
  tracing,
  measures,
  correcting,
  scale,
  target,
  onTarget,
  append,
}: FilmStepsProps) {
  const { working } = marks;
  const view = film.view.value;
  const placed = CLICKS.filter((click) => placeOf(working, click) !== null).length;
  const fracture = working.fracture.filter((place) => place !== null).length;
  const ends = working.ends.filter((place) => place !== null).length;
  return (
    <ol className="steps">
      <Step name="View" isDone={view !== null}>
        <Choice
          label="Which view this film is"
          isLabelHidden
          options={VIEWS}
          value={view}
          onChange={(chosen) => append([{ kind: 'film-view-set', payload: { filmId: film.filmId, view: chosen } }])}
        />
        <HeaderFacts header={open.facts.header} />
        {open.facts.warnings.map((warning) => (
          <span key={warning} className="film-warning">
            <VerdictMark verdict="watch" />
            {capital(warning)}.
          </span>
        ))}
      </Step>
      {view && (
        <Step name="To the right" isDone={working.towards !== null}>
          <Choice
            label="Which side of the patient the right edge of this film shows"
            isLabelHidden
            options={sidesOf(view).map((side) => [side, side] as const)}
            value={working.towards}
            onChange={(towards) => marks.keep({ towards })}
          />
        </Step>
      )}
      <Step name="Scale" isDone={film.calibration !== null && film.trace?.value.mmPerPixel.value !== null}>
        <ScaleStep scale={scale} spacing={open.facts.spacing} marks={marks} target={target} onTarget={onTarget} />
      </Step>
      <Step name="Four clicks" isDone={placed === CLICKS.length}>
        <span className="step-marks">
          {CLICKS.map((click, i) => (
            <button
              key={click}
              type="button"
              className="button-small"
              aria-pressed={target === click}
              onClick={() => onTarget(click)}
            >
              {i + 1}
              <span className="sr-only">{placeOf(working, click) ? ', placed; place it again' : ', not placed'}</span>
              {placeOf(working, click) && <Tick />}
            </button>
          ))}
        </span>
        <span className="caption">
          1, 2 along the proximal part, 3, 4 along the distal part. Near enough is enough.
        </span>
      </Step>
      <Step name="Fracture" isDone={fracture === 2}>
        <button
          type="button"
          className="button-small"
          aria-pressed={target?.startsWith('fracture') ?? false}
          onClick={() => onTarget('fracture-1')}
        >
          {fracture === 2 ? 'mark it again' : 'two clicks, one at each wall'}
        </button>
      </Step>
      <Step name="Bone ends" isDone={ends === 2} isOptional>
        <span className="step-marks">
          <button
            type="button"
            className="button-small"
            aria-pressed={target === 'end-1'}
            onClick={() => onTarget('end-1')}
          >
            proximal{working.ends[0] && <Tick />}
          </button>
          <button
            type="button"
            className="button-small"
            aria-pressed={target === 'end-2'}
            onClick={() => onTarget('end-2')}
          >
            distal{working.ends[1] && <Tick />}
          </button>
        </span>
        <span className="caption">For the whole length. Without them it runs from click 1 to click 4.</span>
      </Step>
      {correcting && (
        <Step name="Walls" isDone={correcting.all.length > 0} isOptional>
          <CorrectStep correcting={correcting} />
        </Step>
      )}
      <Step name="By hand" isDone={measures.done.length > 0} isOptional>
        <MeasureStep measures={measures} />
      </Step>
      <TraceState
        tracing={tracing}
        trace={correcting?.trace ?? film.trace?.value ?? null}
        missing={missingWords(film, marks)}
      />
    </ol>
  );
}

const Tick = () => (
  <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
    <path d="M2 6.5L5 9.5L10 3" fill="none" stroke="currentColor" strokeWidth="2" />
  </svg>
);

/** What keeps the walls from being traced, in words; null where nothing does. */
function missingWords(film: FilmState, { working }: Marks): string | null {
  const wants = [
    film.view.value === null && 'which view it is',
    film.view.value !== null && working.towards === null && 'which side is to the right',
    film.calibration === null && 'its scale',
    CLICKS.some((click) => placeOf(working, click) === null) && 'four clicks',
  ].filter((word) => typeof word === 'string');
  return wants.length === 0 ? null : `To be traced, this film wants ${wants.join(', ')}.`;
}

interface TraceStateProps {
  readonly tracing: Tracing;
  readonly trace: Trace | null;
  readonly missing: string | null;
}

function TraceState({ tracing, trace, missing }: TraceStateProps) {
  const notes =
    trace?.segments.flatMap(({ name, notes: said }) => said.map((note) => `${capital(name)} part, ${note}.`)) ?? [];
  return (
    <li className="trace-state" aria-live="polite">
      {tracing.kind === 'offered' && (
        <button type="button" className="button" onClick={tracing.start}>
          Find the walls
        </button>
      )}
      {tracing.kind === 'running' && <span className="quiet">Finding the walls</span>}
      {tracing.kind === 'failed' && <FieldWhy why={tracing.why} />}
      {tracing.kind === 'idle' && trace === null && missing && <span className="quiet">{missing}</span>}
      {trace?.mmPerPixel.value === null && (
        <FieldWhy why={`No scale: ${trace.mmPerPixel.why ?? 'the ball was not found'}.`} />
      )}
      {notes.length > 0 && (
        <details>
          <summary>{notes.length === 1 ? '1 stretch' : `${notes.length} stretches`} could not be read</summary>
          <ul className="trace-notes">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}
