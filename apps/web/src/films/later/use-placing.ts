/** Three landmarks of the plan clicked on a later film: the plan laid over it, recorded as soon as all three are there. */
import type { FilmState } from '@bonewright/casebook';
import type { ViewFigure } from '@bonewright/construct';
import {
  isPlaced,
  type Landmark,
  type Match,
  mirroredBy,
  type Pixel,
  type Placing,
  placePlan,
  planLandmarks,
  type Towards,
} from '@bonewright/film';
import { useMemo, useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import { tidy } from '../marks/target.ts';
import type { Aim } from '../plate/aim.ts';
import { matchesOf, type PlacedPoint, readPoints, recordedPoints } from './later-draft.ts';

export interface LayingOver {
  readonly landmarks: readonly Landmark[];
  readonly points: readonly PlacedPoint[];
  readonly placing: Placing | null;
  /** Why the plan cannot be laid over these points; null where it can, or they are not all there. */
  readonly why: string | null;
  readonly aim: Aim | null;
  /** The point that the next click places; null where none is wanted. */
  readonly wanted: number | null;
  readonly want: (point: number) => void;
  readonly hold: (point: number, at: Pixel) => void;
  readonly keep: (point: number, at: Pixel | null) => void;
  readonly choose: (point: number, landmark: string) => void;
}

interface PlacingProps {
  readonly film: FilmState;
  readonly figure: ViewFigure;
  readonly towards: Towards | null;
  readonly append: Append;
}

export function usePlacing({ film, figure, towards, append }: PlacingProps): LayingOver {
  const landmarks = useMemo(() => planLandmarks(figure), [figure]);
  const draft = useDraft(`later.${film.filmId}`, readPoints);
  const [asked, ask] = useState<number | null>(null);
  const points = useMemo(() => draft.value ?? recordedPoints(film, landmarks), [draft.value, film, landmarks]);
  const laid = useMemo(() => laidOver(matchesOf(points, landmarks), towards), [points, landmarks, towards]);
  const first = points.findIndex(({ at }) => at === null);
  const wanted = asked ?? (first < 0 ? null : first);

  const settle = (next: readonly PlacedPoint[]) => {
    const matches = matchesOf(next, landmarks);
    const isMirrored = matches && towards ? mirroredBy(matches, towards) : undefined;
    if (!matches || !isPlaced(placePlan(matches, isMirrored))) return draft.set(next);
    draft.clear();
    const sided = isMirrored === undefined ? {} : { isMirrored };
    append([{ kind: 'plan-placed', payload: { filmId: film.filmId, matches: [...matches], ...sided } }]);
  };
  const changed = (point: number, change: Partial<PlacedPoint>) =>
    points.map((old, i) => (i === point ? { ...old, ...change } : old));
  const keep = (point: number, at: Pixel | null) => settle(changed(point, { at: at && tidy(at) }));
  const words = wanted === null ? null : wordsOf(points[wanted], landmarks);
  return {
    landmarks,
    points,
    ...laid,
    wanted,
    aim:
      wanted === null || words === null
        ? null
        : {
            words,
            place: (at) => {
              keep(wanted, at);
              ask(null);
              return `${words}, placed`;
            },
          },
    want: ask,
    hold: (point, at) => draft.set(changed(point, { at })),
    keep,
    choose: (point, landmark) => {
      settle(changed(point, { landmark, at: null }));
      ask(point);
    },
  };
}

const wordsOf = (point: PlacedPoint | undefined, landmarks: readonly Landmark[]): string | null =>
  landmarks.find(({ id }) => id === point?.landmark)?.words ?? null;

function laidOver(
  matches: readonly Match[] | null,
  towards: Towards | null,
): { readonly placing: Placing | null; readonly why: string | null } {
  if (!matches) return { placing: null, why: null };
  const placed = placePlan(matches, towards ? mirroredBy(matches, towards) : undefined);
  return isPlaced(placed) ? { placing: placed, why: null } : { placing: null, why: placed.why };
}
