/**
 * The films of a case by occasion and day. A film says its occasion itself, somebody says it by hand, or it follows from
 * the dates: one that the bone was measured on, or taken before a plan was chosen, is a film from before.
 */
import type { CaseState, FilmState } from './case-state.ts';
import type { Occasion } from './kinds/film-occasion.ts';

/** The occasion of one film of a case. */
export function occasionOf(state: CaseState, film: FilmState): Occasion {
  const said = film.occasion?.value ?? film.file.value.occasion;
  if (said !== undefined) return said;
  const { bone, construct, theatre } = state;
  const takenAt = takenOn(film);
  const isMeasuredOn = bone?.value.filmIds.includes(film.filmId) ?? false;
  if (isMeasuredOn || construct === null || takenAt < construct.at) return 'before';
  const closedAt = theatre.putty?.hard?.value.at ?? null;
  if (closedAt === null || takenAt < closedAt) return 'in theatre';
  return daysBetween(closedAt, takenAt) < 1 ? 'after' : 'recheck';
}

const takenOn = ({ file }: FilmState): string => file.value.takenAt ?? file.at;

/** Films from before the repair, in the order they were added: those that measure, trace and plan work on. */
export const filmsBefore = (state: CaseState): FilmState[] =>
  state.films.filter((film) => occasionOf(state, film) === 'before');

/** When the patient was operated on: the first pin in, else the first film after it; null before that. */
export function operatedAt(state: CaseState): string | null {
  const pins = state.theatre.pins.flatMap(({ placed }) => (placed ? [placed.at] : []));
  const films = state.films.filter((film) => ['in theatre', 'after'].includes(occasionOf(state, film))).map(takenOn);
  const [first] = pins.length > 0 ? pins.toSorted() : films.toSorted();
  return first ?? null;
}

/** Films of one occasion and day, the newest of each view. */
export interface FilmSet {
  readonly occasion: Occasion;
  /** Days after the operation; null while there was none. */
  readonly day: number | null;
  readonly craniocaudal: FilmState | null;
  readonly mediolateral: FilmState | null;
  /** Those whose view nobody has said, and older ones of a view. */
  readonly others: readonly FilmState[];
}

/** The later films of a case, the earliest first. */
export function laterFilmSets(state: CaseState): FilmSet[] {
  const later = state.films
    .map((film) => ({ film, occasion: occasionOf(state, film), at: takenOn(film) }))
    .filter(({ occasion }) => occasion !== 'before')
    .toSorted((a, b) => a.at.localeCompare(b.at));
  const began = operatedAt(state);
  const sets = new Map<string, typeof later>();
  for (const one of later) {
    const key = `${one.occasion} ${dayAfter(began, one.at)}`;
    sets.set(key, [...(sets.get(key) ?? []), one]);
  }
  return [...sets.values()].map((of) => {
    const newest = (view: 'craniocaudal' | 'mediolateral') =>
      of.findLast(({ film }) => film.view.value === view)?.film ?? null;
    const [craniocaudal, mediolateral] = [newest('craniocaudal'), newest('mediolateral')];
    const others = of.map(({ film }) => film).filter((film) => film !== craniocaudal && film !== mediolateral);
    return { occasion: of[0]!.occasion, day: dayAfter(began, of[0]!.at), craniocaudal, mediolateral, others };
  });
}

/** The nearest whole number of days, so that an hour's difference in the day does not count. */
const dayAfter = (began: string | null, at: string): number | null =>
  began === null ? null : Math.max(0, Math.round(daysBetween(began, at)));

const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** Days and their parts since a fixed day, of a time in UTC: the Julian day number of the Gregorian calendar, from noon. */
function dayNumber(iso: string): number {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = iso.split(/\D/).map(Number);
  // the year begins in March, so that the leap day is its last
  const back = month < 3 ? 1 : 0;
  const [y, m] = [year + 4800 - back, month + 12 * back - 3];
  const leapDays = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  const daysBefore = 365 * y + leapDays + Math.floor((153 * m + 2) / 5);
  return day + daysBefore + (hour * 60 + minute) / 1440;
}
