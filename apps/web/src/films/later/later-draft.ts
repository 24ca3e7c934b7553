/** The three points by which a plan is laid over a later film: as recorded, and over it what is being placed. */
import type { FilmState } from '@bonewright/casebook';
import type { Landmark, Match, Pixel } from '@bonewright/film';
import { type MaybePixel, readPixel } from '../marks/pixel.ts';

export interface PlacedPoint {
  readonly landmark: string;
  /** Null until it is placed. */
  readonly at: MaybePixel;
}

export const POINTS = 3;

/** What was kept on this device; null where nothing fit to use was. */
export function readPoints(kept: unknown): readonly PlacedPoint[] | null {
  if (!Array.isArray(kept) || kept.length !== POINTS) return null;
  const points = kept.map((one: unknown) =>
    typeof one === 'object' && one !== null && 'landmark' in one && 'at' in one && typeof one.landmark === 'string'
      ? { landmark: one.landmark, at: readPixel(one.at) }
      : null,
  );
  return points.every((point) => point !== null) ? points : null;
}

/** The recorded points where the plan still has them, else the usual landmarks without a place. */
export function recordedPoints(film: FilmState, landmarks: readonly Landmark[]): readonly PlacedPoint[] {
  const usual = landmarks.slice(0, POINTS).map(({ id }) => ({ landmark: id, at: null }));
  const recorded = (film.placing?.value.matches ?? []).flatMap(({ plan, film: at }) => {
    const same = landmarks.find((l) => l.at[0] === plan[0] && l.at[1] === plan[1]);
    return same ? [{ landmark: same.id, at: at as Pixel }] : [];
  });
  return recorded.length === POINTS ? recorded : usual;
}

/** The matches, once every point has its place and no landmark is used twice; null until then. */
export function matchesOf(points: readonly PlacedPoint[], landmarks: readonly Landmark[]): readonly Match[] | null {
  const matches = points.flatMap(({ landmark, at }) => {
    const known = landmarks.find(({ id }) => id === landmark);
    return known && at ? [{ plan: known.at, film: at }] : [];
  });
  const isTwice = new Set(points.map(({ landmark }) => landmark)).size < points.length;
  return matches.length === points.length && !isTwice ? matches : null;
}
