/** Folds the events of one case into its state. Pure; never refuses a record: what cannot be applied is set aside with the reason. */
import { InputError } from '@bonewright/fault';
import type { CaseState, FilmState, Patient } from './case-state.ts';
import { type CaseEvent, type EventOf, isKnown, type RecordedEvent } from './events.ts';
import { applyAdmission, notAdmitted } from './kinds/admission.ts';
import { applyCare, type CareEvent, noCare } from './kinds/care.ts';
import { applyChart, emptyChart } from './kinds/chart.ts';
import { applyCourse, courseBegins } from './kinds/course.ts';
import { applyDose, type DoseEvent, isOfDoses } from './kinds/doses.ts';
import { applyHandMeasure } from './kinds/hand-measures.ts';
import { signed } from './signed.ts';
import { applyInTheatre, isPuttyWithoutMix, type TheatreEvent, withLast } from './theatre-fold.ts';

/** The state after all of these events of one case, in order. Throws InputError where one is missing or of another case. */
export function foldCase(events: readonly RecordedEvent[]): CaseState {
  return events.reduce(applyEvent, emptyCase(events[0]?.caseId ?? ''));
}

/** The state after one more event. Throws InputError where it is not the next one. */
export function applyEvent(state: CaseState, event: RecordedEvent): CaseState {
  if (event.seq !== state.seq + 1)
    throw new InputError(`event ${event.seq} follows event ${state.seq}`, 'seq', 'read the events between them first');
  if (state.caseId !== '' && event.caseId !== state.caseId)
    throw new InputError(`event ${event.seq} belongs to another case`, 'caseId', 'fold one case at a time');
  const next = { ...state, caseId: event.caseId, seq: event.seq, changedAt: event.at };
  if (!isKnown(event)) return setAside(next, event, 'it was written by a newer version of Bonewright');
  return apply(next, event);
}

export function emptyCase(caseId: string): CaseState {
  return {
    caseId,
    seq: 0,
    openedAt: '',
    changedAt: '',
    patient: null,
    films: [],
    bone: null,
    reduction: null,
    fracture: null,
    keepOut: null,
    corridors: null,
    softTissueMm: null,
    drawer: null,
    construct: null,
    ranking: null,
    sheets: [],
    theatre: { pins: [], putty: null, counts: [] },
    benchTests: [],
    scores: [],
    admission: notAdmitted,
    chart: emptyChart,
    care: noCare,
    course: courseBegins,
    doses: [],
    notes: [],
    enteredStage: null,
    setAside: [],
  };
}

function apply(state: CaseState, event: CaseEvent): CaseState {
  if (isOfDoses(event)) return withDose(state, event);
  switch (event.kind) {
    case 'case-opened':
      if (state.patient) return setAside(state, event, 'the case is already open');
      return { ...state, openedAt: event.at, patient: signed(event, event.payload) };
    case 'patient-amended':
      return amendPatient(state, event);
    case 'film-added':
      return addFilm(state, event);
    case 'film-removed':
      return withFilm(state, event, () => null);
    case 'film-view-set':
      return withFilm(state, event, (film) => ({ ...film, view: signed(event, event.payload.view) }));
    case 'film-occasion-set':
      return withFilm(state, event, (film) => ({ ...film, occasion: signed(event, event.payload.occasion) }));
    case 'film-calibrated':
      return withFilm(state, event, (film) => ({
        ...untraced(film),
        calibration: signed(event, event.payload.calibration),
      }));
    case 'film-clicked': {
      const { filmId: _, ...clicks } = event.payload;
      return withFilm(state, event, (film) => ({ ...untraced(film), clicks: signed(event, clicks) }));
    }
    case 'film-traced':
      return withFilm(state, event, (film) => ({ ...untraced(film), trace: signed(event, event.payload.trace) }));
    case 'film-corrected':
      return correctTrace(state, event);
    case 'fracture-marked':
      return withFilm(state, event, (film) => ({ ...film, fractureLine: signed(event, event.payload.line) }));
    case 'hand-measured':
    case 'hand-measure-taken-back':
      return withFilm(state, event, (film) => ({
        ...film,
        handMeasures: applyHandMeasure(film.handMeasures ?? [], event),
      }));
    case 'bone-joined':
      return { ...state, bone: signed(event, event.payload), reduction: null };
    case 'bone-reduced':
      if (!state.bone) return setAside(state, event, 'the views have not been joined');
      return { ...state, reduction: signed(event, event.payload) };
    case 'fracture-described':
      return { ...state, fracture: signed(event, event.payload) };
    case 'keep-out-set':
      return { ...state, keepOut: signed(event, event.payload) };
    case 'corridors-set':
      return { ...state, corridors: signed(event, event.payload.corridors) };
    case 'soft-tissue-set':
      return { ...state, softTissueMm: signed(event, event.payload.softTissueMm) };
    case 'drawer-set':
      return { ...state, drawer: signed(event, event.payload) };
    case 'construct-chosen':
      return { ...state, construct: signed(event, event.payload) };
    case 'plans-ranked':
      return { ...state, ranking: signed(event, event.payload) };
    case 'sheet-printed':
      return { ...state, sheets: [...state.sheets, signed(event, event.payload)] };
    case 'stage-entered':
      return { ...state, enteredStage: signed(event, event.payload.stage) };
    case 'note-added':
      return { ...state, notes: [...state.notes, signed(event, event.payload)] };
    case 'pin-placed':
    case 'pin-skipped':
    case 'pin-taken-back':
    case 'putty-mixed':
    case 'putty-hard':
    case 'counted':
      return inTheatre(state, event);
    case 'bench-tested': {
      const isSame = (test: CaseState['benchTests'][number]) => test.value.columnId === event.payload.columnId;
      return { ...state, benchTests: withLast(state.benchTests, isSame, signed(event, event.payload)) };
    }
    case 'plan-placed': {
      const { filmId: _, ...placing } = event.payload;
      return withFilm(state, event, (film) => ({ ...film, placing: signed(event, placing) }));
    }
    case 'admission-noted':
    case 'course-decided':
      return { ...state, admission: applyAdmission(state.admission, event) };
    case 'reading-taken':
    case 'reading-taken-back':
    case 'chart-marked':
    case 'blood-lost':
    case 'fluid-given':
    case 'fluids-planned':
    case 'feed-planned':
    case 'check-ticked':
      return { ...state, chart: applyChart(state.chart, event) };
    case 'weighed':
    case 'fed':
    case 'pin-site-seen':
    case 'limb-use-seen':
    case 'photo-added':
    case 'question-asked':
    case 'question-answered':
    case 'aftercare-planned':
      return cared(state, event);
    case 'union-judged':
    case 'frame-off-decided':
    case 'frame-taken-off':
    case 'recheck-set':
    case 'readiness-noted':
    case 'limit-chosen':
    case 'forecast-noted':
    case 'released':
    case 'sighted':
    case 'bone-outcome':
    case 'patient-outcome':
      return { ...state, course: applyCourse(state.course, event) };
    case 'cortices-scored': {
      const { day, scale } = event.payload;
      const isSame = ({ value }: CaseState['scores'][number]) => value.day === day && value.scale === scale;
      return { ...state, scores: withLast(state.scores, isSame, signed(event, event.payload)) };
    }
  }
}

function cared(state: CaseState, event: CareEvent): CaseState {
  const care = applyCare(state.care, event);
  return typeof care === 'string' ? setAside(state, event, care) : { ...state, care };
}

function setAside(state: CaseState, event: RecordedEvent, because: string): CaseState {
  return { ...state, setAside: [...state.setAside, { event, because }] };
}

function inTheatre(state: CaseState, event: TheatreEvent): CaseState {
  if (isPuttyWithoutMix(state.theatre, event)) return setAside(state, event, 'no putty was mixed');
  return { ...state, theatre: applyInTheatre(state.theatre, event) };
}

function withDose(state: CaseState, event: DoseEvent): CaseState {
  const doses = applyDose(state.doses, event);
  return typeof doses === 'string' ? setAside(state, event, doses) : { ...state, doses };
}

function amendPatient(state: CaseState, event: EventOf<'patient-amended'>): CaseState {
  if (!state.patient) return setAside(state, event, 'the case has not been opened');
  const said = Object.entries(event.payload).filter(([, value]) => value !== undefined);
  const value: Patient = { ...state.patient.value, ...Object.fromEntries(said) };
  return { ...state, patient: signed(event, value) };
}

function addFilm(state: CaseState, event: EventOf<'film-added'>): CaseState {
  const { payload } = event;
  if (state.films.some((film) => film.filmId === payload.filmId))
    return setAside(state, event, 'this film is already in the case');
  const film: FilmState = {
    filmId: payload.filmId,
    file: signed(event, payload),
    view: signed(event, payload.view),
    calibration: null,
    clicks: null,
    trace: null,
    fractureLine: null,
  };
  return { ...state, films: [...state.films, film] };
}

/** A film whose trace no longer stands, nor what was said of it. */
function untraced({ corrections: _, ...film }: FilmState): FilmState {
  return { ...film, trace: null };
}

function correctTrace(state: CaseState, event: EventOf<'film-corrected'>): CaseState {
  const { filmId, corrections } = event.payload;
  if (state.films.some((film) => film.filmId === filmId && !film.trace))
    return setAside(state, event, 'its film has not been traced');
  return withFilm(state, event, (film) => ({ ...film, corrections: signed(event, corrections) }));
}

type FilmEvent = CaseEvent & { readonly payload: { readonly filmId: string } };

function withFilm(state: CaseState, event: FilmEvent, change: (film: FilmState) => FilmState | null): CaseState {
  const { filmId } = event.payload;
  if (!state.films.some((film) => film.filmId === filmId)) return setAside(state, event, 'its film is not in the case');
  const films = state.films.map((film) => (film.filmId === filmId ? change(film) : film));
  return { ...state, films: films.filter((film) => film !== null) };
}
