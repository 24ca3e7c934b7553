/** Correcting the walls of one film: which station is looked at, and what is said of it. */
import type { FilmState } from '@bonewright/casebook';
import type { Correction, Pixel, Trace, WallSide } from '@bonewright/film';
import { useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import type { Aim } from '../plate/aim.ts';
import {
  asCorrected,
  isAt,
  isOut,
  nearestPlace,
  type Place,
  placesOf,
  withEdge,
  withNothingAt,
  withoutStation,
} from './corrections.ts';

export interface Correcting {
  /** The trace with its corrections. */
  readonly trace: Trace;
  /** The station looked at; null while nothing is being corrected. */
  readonly place: Place | null;
  readonly all: readonly Correction[];
  readonly isLeftOut: boolean;
  /** Something was said of this station. */
  readonly isTouched: boolean;
  readonly aim: Aim | null;
  readonly start: () => void;
  readonly stop: () => void;
  /** Along the bone; stops at its ends. */
  readonly step: (by: number) => void;
  readonly putEdge: (side: WallSide, to: Pixel) => void;
  readonly leaveOut: () => void;
  readonly undo: () => void;
  readonly undoAll: () => void;
}

/** Null where there is nothing to correct. */
export function useCorrecting(film: FilmState, append: Append): Correcting | null {
  const [chosen, choose] = useState<Place | null>(null);
  const trace = asCorrected(film);
  if (!trace || trace.mmPerPixel.value === null) return null;
  const places = placesOf(trace);
  const index = chosen ? places.findIndex((place) => isAt(place, chosen)) : -1;
  const place = places[index] ?? null;
  const all = film.corrections?.value ?? [];
  const here = place ? all.filter((correction) => isAt(correction, place)) : [];
  const record = (corrections: readonly Correction[]) =>
    append([{ kind: 'film-corrected', payload: { filmId: film.filmId, corrections: [...corrections] } }]);
  const clicked = (at: Pixel): string => {
    const next = nearestPlace(trace, at);
    choose(next);
    return next ? `station ${next.sMm.toFixed(1)} mm, ${next.segment} part` : '';
  };
  if (places.length === 0) return null;
  return {
    trace,
    place,
    all,
    isLeftOut: here.some(isOut),
    isTouched: here.length > 0,
    aim: place && { words: 'another station, or drag a wall of this one', place: clicked },
    start: () => choose(places[places.length >> 1] ?? null),
    stop: () => choose(null),
    step: (by) => choose(places[Math.min(places.length - 1, Math.max(0, index + by))] ?? null),
    putEdge: (side, to) => place && record(withEdge(all, place, side, to)),
    leaveOut: () => place && record(withoutStation(all, place)),
    undo: () => place && record(withNothingAt(all, place)),
    undoAll: () => record([]),
  };
}
