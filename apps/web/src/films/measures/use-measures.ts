/** Measuring by hand on one film: what is recorded, what is being clicked. */
import type { FilmState } from '@bonewright/casebook';
import type { Measured, Pixel, Trace } from '@bonewright/film';
import { useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import { randomId } from '../../sync/random-id.ts';
import type { Aim } from '../plate/aim.ts';
import {
  alongTraced,
  asRecorded,
  CLICK_WORDS,
  type HandMeasure,
  isWhole,
  type MeasureKind,
  measured,
  recordedMeasures,
  resultWords,
} from './hand-measure.ts';

export interface Measures {
  readonly mmPerPixel: Measured;
  readonly done: readonly HandMeasure[];
  /** The one being clicked. */
  readonly current: HandMeasure | null;
  readonly aim: Aim | null;
  readonly start: (kind: MeasureKind) => void;
  readonly stop: () => void;
  readonly movePoint: (measure: HandMeasure, point: number, to: Pixel) => void;
  readonly remove: (measure: HandMeasure) => void;
}

export function useMeasures(film: FilmState, trace: Trace | null, mmPerPixel: Measured, append: Append): Measures {
  const { filmId } = film;
  const [current, setCurrent] = useState<HandMeasure | null>(null);
  const record = (one: HandMeasure) =>
    append([{ kind: 'hand-measured', payload: asRecorded(filmId, one, mmPerPixel) }]);

  const place = (at: Pixel): string => {
    if (!current) return '';
    const first = current.points.length === 0;
    const along = current.kind === 'diameter' && first ? alongTraced(trace, at) : null;
    const next = { ...current, points: [...current.points, ...(along ?? []), at] };
    if (!isWhole(next)) {
      setCurrent(next);
      return `next: ${CLICK_WORDS[next.kind][next.points.length]}`;
    }
    record(next);
    setCurrent(null);
    const result = measured(next, mmPerPixel);
    return result ? `${next.kind} ${resultWords(result)}` : '';
  };
  const skipsAxis = trace !== null && current?.kind === 'diameter' && current.points.length === 0;
  const word = current && CLICK_WORDS[current.kind][skipsAxis ? 2 : current.points.length];
  return {
    mmPerPixel,
    done: recordedMeasures(film),
    current,
    aim: word ? { words: word, place } : null,
    start: (kind) => setCurrent({ id: randomId(), kind, points: [] }),
    stop: () => setCurrent(null),
    movePoint: (one, point, to) => record({ ...one, points: one.points.map((old, k) => (k === point ? to : old)) }),
    remove: ({ id }) => append([{ kind: 'hand-measure-taken-back', payload: { filmId, measureId: id } }]),
  };
}
