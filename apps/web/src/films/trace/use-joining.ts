/** Joins the two views into one bone as soon as both are whole, again when one of them changes, and records it. */
import { type CaseState, type FilmState, outOfDate, type View } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { joinViews, type TracedView } from '@bonewright/film';
import { useEffect, useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import { asCorrected } from '../correct/corrections.ts';

export interface Joining {
  /** Why the views could not be joined, in words; null where they were, or are not whole yet. */
  readonly failure: string | null;
  /** Joins them; null where there is nothing to join, or it is done without being asked. */
  readonly start: (() => void) | null;
}

interface JoiningProps {
  readonly state: CaseState;
  /** The craniocaudal view, then the mediolateral one; null where there is none. */
  readonly views: readonly [FilmState | null, FilmState | null];
  readonly betweenViewsDeg: number;
  readonly isOwn: (seq: number) => boolean;
  readonly append: Append;
}

/** Done at once where this tab made the last entry; otherwise offered, so that looking at a case records nothing. */
export function useJoining({ state, views, betweenViewsDeg, isOwn, append }: JoiningProps): Joining {
  const [failure, setFailure] = useState<{ readonly of: string; readonly why: string } | null>(null);
  const [a, b] = views.map((view) => view && tracedView(view));
  const ids = views.map((view) => view?.filmId ?? '');
  const isOld = state.bone === null || outOfDate(state).some(({ part }) => part === 'bone');
  const isOthers = state.bone !== null && ids.some((id, i) => state.bone?.value.filmIds[i] !== id);
  const madeFrom = a && b ? JSON.stringify([ids, a, b, betweenViewsDeg]) : null;
  const [joined, setJoined] = useState(() => (isOld ? null : madeFrom));
  const isChangedHere = joined !== null && joined !== madeFrom;
  const isWanted = madeFrom !== null && (isOld || isOthers || isChangedHere);
  const isDue = isWanted && (isChangedHere || isOwn(Math.max(0, ...views.map((view) => newestSeq(view)))));
  const join = () => {
    if (!a || !b || madeFrom === null) return;
    try {
      const bone = joinViews(a, b, betweenViewsDeg);
      append([{ kind: 'bone-joined', payload: { filmIds: [ids[0] ?? '', ids[1] ?? ''], bone, betweenViewsDeg } }]);
      setJoined(madeFrom);
      setFailure(null);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setFailure({ of: madeFrom, why: faultLine(error) });
    }
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for both views, the angle and the ids, whose numbers change when others' entries come between
  useEffect(() => {
    if (isDue) join();
  }, [isDue, madeFrom]);
  return {
    failure: failure !== null && failure.of === madeFrom ? failure.why : null,
    start: isWanted && !isDue ? join : null,
  };
}

/** A film as both views are joined from it; null until it is whole. */
export function tracedView(film: FilmState): TracedView | null {
  const trace = asCorrected(film);
  const clicks = film.clicks?.value;
  const line = film.fractureLine?.value;
  if (!trace || !clicks || !line) return null;
  const { columnTowards, boneEnds } = clicks;
  return { trace, columnTowards, fractureLine: line, boneEnds };
}

const newestSeq = (film: FilmState | null): number =>
  Math.max(0, film?.trace?.seq ?? 0, film?.fractureLine?.seq ?? 0, film?.clicks?.seq ?? 0, film?.corrections?.seq ?? 0);

/** The newest film of each view. */
export function filmOfView(films: readonly FilmState[], view: View): FilmState | null {
  return films.findLast((film) => film.view.value === view) ?? null;
}
