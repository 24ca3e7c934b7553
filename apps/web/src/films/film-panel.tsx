/** One film with its plate and its steps. */
import type { FilmState } from '@bonewright/casebook';
import { useRef, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import type { Append } from '../sync/new-event.ts';
import { capital } from '../words/patient.ts';
import { moment } from '../words/time.ts';
import { asCorrected } from './correct/corrections.ts';
import { StationHandles } from './correct/station-handles.tsx';
import { useCorrecting } from './correct/use-correcting.ts';
import { useOpenFilm } from './engine/use-open-film.ts';
import type { Intake } from './intake/use-intake.ts';
import { nextTarget, TARGET_WORDS, type Target } from './marks/target.ts';
import { useMarks } from './marks/use-marks.ts';
import { MeasuredLines } from './measures/measured-lines.tsx';
import { useMeasures } from './measures/use-measures.ts';
import { useScale } from './measures/use-scale.ts';
import { CornersDrawn } from './overlay/corners-drawn.tsx';
import { saysPlace } from './overlay/marked.tsx';
import type { Aim } from './plate/aim.ts';
import { FilmPlate } from './plate/film-plate.tsx';
import { KeysHelp, Legend } from './plate/plate-help.tsx';
import type { LinkedLevels } from './plate/use-levels.ts';
import { isWhole } from './shown-films.ts';
import { FilmSteps } from './steps/film-steps.tsx';
import { PhotographStep } from './steps/photograph-step.tsx';
import { StepsFrame } from './steps/steps-frame.tsx';
import { useCorners } from './steps/use-corners.ts';
import { TakeOut } from './take-out.tsx';
import { useTracing } from './trace/use-tracing.ts';

interface FilmPanelProps {
  readonly film: FilmState;
  readonly place: 'first' | 'second';
  readonly isCurrent: boolean;
  readonly isOwn: (seq: number) => boolean;
  readonly intake: Intake;
  readonly linked: LinkedLevels;
  readonly append: Append;
}

export function FilmPanel({ film, place, isCurrent, isOwn, intake, linked, append }: FilmPanelProps) {
  const { filmId } = film;
  const file = film.file.value;
  const opening = useOpenFilm(file.sha256, file.fileName);
  const marks = useMarks(film, append);
  const tracing = useTracing({ film, opening, isOwn, append });
  const corners = useCorners();
  const correcting = useCorrecting(film, append);
  const trace = asCorrected(film);
  const scale = useScale(film, opening);
  const measures = useMeasures(film, trace, scale.mmPerPixel, append);
  const [wanted, setWanted] = useState<Target | null>(null);

  const { section, goToPlate, goBack } = usePlateFocus();

  const target = wanted ?? nextTarget(marks.working);
  const want = (next: Target) => {
    setWanted(next);
    goToPlate();
  };
  const name = film.view.value ? `${film.view.value} film` : `film ${file.fileName}`;
  const aim: Aim | null = target && {
    words: TARGET_WORDS[target],
    place: (at) => {
      marks.keepMark(target, at);
      setWanted(followsOn(target));
      return `${saysPlace(target, at)}, placed`;
    },
  };
  return (
    <>
      <section ref={section} className={`film film-${place}`} aria-label={capital(name)}>
        <header className="film-head">
          <h2>{film.view.value ? capital(film.view.value) : file.fileName}</h2>
          <span className="quiet">{headWords(film)}</span>
        </header>
        {opening.kind === 'open' && (
          <FilmPlate
            film={opening.film}
            name={name}
            marks={marks}
            clicks={marks.working.clicks}
            trace={trace}
            aim={corners.aim ?? measures.aim ?? correcting?.aim ?? aim}
            busy={tracing.kind === 'running' ? 'finding the walls' : null}
            linked={linked}
            onTarget={setWanted}
            onLeave={goBack}
            onStation={correcting?.place ? correcting.step : null}
            over={(unit, onSay) => (
              <>
                <CornersDrawn placed={corners.placed} unit={unit} />
                {correcting && <StationHandles correcting={correcting} unit={unit} onSay={onSay} />}
                <MeasuredLines measures={measures} unit={unit} onSay={onSay} />
              </>
            )}
          />
        )}
        {opening.kind === 'reading' && <p className="plate plate-empty">Reading {file.fileName}</p>}
        {opening.kind === 'failed' && (
          <div className="plate plate-empty">
            <FieldWhy why={opening.why} />
          </div>
        )}
        {place === 'first' ? <KeysHelp /> : <Legend />}
      </section>
      <StepsFrame
        place={place}
        title={film.view.value ? capital(film.view.value) : file.fileName}
        isWhole={isWhole(film)}
        isCurrent={isCurrent}
      >
        {opening.kind === 'open' && opening.film.facts.format !== 'dicom' && !file.photograph && (
          <PhotographStep
            open={opening.film}
            corners={corners}
            onSquared={(bytes) => intake.takeSquared(`${file.fileName}, squared up.png`, bytes)}
          />
        )}
        {opening.kind === 'open' && (
          <FilmSteps
            film={film}
            open={opening.film}
            marks={marks}
            tracing={tracing}
            measures={{ ...measures, start: andGo(measures.start, goToPlate) }}
            correcting={correcting && { ...correcting, start: andGo(correcting.start, goToPlate) }}
            scale={scale}
            target={target}
            onTarget={want}
            append={append}
          />
        )}
        <p className="film-file">
          <span className="caption">{file.fileName}</span>
          <TakeOut filmId={filmId} append={append} />
        </p>
      </StepsFrame>
    </>
  );
}

function andGo<A extends readonly unknown[]>(job: (...given: A) => void, go: () => void): (...given: A) => void {
  return (...given) => {
    job(...given);
    go();
  };
}

/** Whoever asks for a mark by key goes on at the plate, and with Escape back to where they asked. */
function usePlateFocus() {
  const section = useRef<HTMLElement>(null);
  const asked = useRef<Element | null>(null);
  return {
    section,
    goToPlate: () => {
      asked.current = document.activeElement;
      section.current?.querySelector<HTMLElement>('[role="application"]')?.focus({ preventScroll: true });
    },
    goBack: () => {
      if (asked.current instanceof HTMLElement) asked.current.focus();
    },
  };
}

/** A line wants its second end right after its first; everything else is asked for by what is missing. */
function followsOn(target: Target): Target | null {
  if (target === 'fracture-1') return 'fracture-2';
  if (target === 'implant-1') return 'implant-2';
  return target === 'end-1' ? 'end-2' : null;
}

const PHOTOGRAPH = 'photograph: low trust, angles only until calibrated';

function headWords(film: FilmState): string {
  const towards = film.clicks?.value.columnTowards;
  const { takenAt, photograph } = film.file.value;
  return [photograph && PHOTOGRAPH, takenAt && `taken ${moment(takenAt)}`, towards && `${towards} to the right`]
    .filter(Boolean)
    .join(' · ');
}
