/** Measuring by hand on one film: what is measured, what is being clicked. */
import type { Measured, Pixel, Trace } from '@bonewright/film';
import { useState } from 'react';
import { useDraft } from '../../sync/use-draft.ts';
import type { Aim } from '../plate/aim.ts';
import {
  alongTraced,
  CLICK_WORDS,
  type HandMeasure,
  isWhole,
  type MeasureKind,
  measured,
  readMeasures,
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
  readonly movePoint: (measure: number, point: number, to: Pixel) => void;
  readonly remove: (measure: number) => void;
}

export function useMeasures(filmId: string, trace: Trace | null, mmPerPixel: Measured): Measures {
  const { value: done, set } = useDraft(`measures.${filmId}`, readMeasures);
  const [current, setCurrent] = useState<HandMeasure | null>(null);

  const place = (at: Pixel): string => {
    if (!current) return '';
    const first = current.points.length === 0;
    const along = current.kind === 'diameter' && first ? alongTraced(trace, at) : null;
    const next = { ...current, points: [...current.points, ...(along ?? []), at] };
    if (!isWhole(next)) {
      setCurrent(next);
      return `next: ${CLICK_WORDS[next.kind][next.points.length]}`;
    }
    set([...done, next]);
    setCurrent(null);
    const result = measured(next, mmPerPixel);
    return result ? `${next.kind} ${resultWords(result)}` : '';
  };
  const skipsAxis = trace !== null && current?.kind === 'diameter' && current.points.length === 0;
  const word = current && CLICK_WORDS[current.kind][skipsAxis ? 2 : current.points.length];
  return {
    mmPerPixel,
    done,
    current,
    aim: word ? { words: word, place } : null,
    start: (kind) => setCurrent({ kind, points: [] }),
    stop: () => setCurrent(null),
    movePoint: (measure, point, to) =>
      set(
        done.map((one, i) =>
          i === measure ? { ...one, points: one.points.map((old, k) => (k === point ? to : old)) } : one,
        ),
      ),
    remove: (measure) => set(done.filter((_, i) => i !== measure)),
  };
}
