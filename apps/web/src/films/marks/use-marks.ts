/** Marks of one film under the hand: shown at once, kept on this device, recorded as soon as a group is whole. */
import type { FilmState } from '@bonewright/casebook';
import { useMemo } from 'react';
import { recall, remember } from '../../sync/device-memory.ts';
import type { Append } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import type { MaybePixel } from './pixel.ts';
import { settle } from './settle.ts';
import { type Target, tidy, withMark } from './target.ts';
import { readUnfinished, type Unfinished, type Working, workingOf } from './working.ts';

/** The practice has one ball: its size is offered again on the next film. */
const BALL_MEMORY = 'ball-diameter-mm';

export interface Marks {
  readonly working: Working;
  /** Changes what is shown without recording it: while something is typed or dragged. */
  readonly hold: (part: Unfinished) => void;
  /** Changes it and records what is whole. */
  readonly keep: (part: Unfinished) => void;
  readonly holdMark: (target: Target, place: MaybePixel) => void;
  readonly keepMark: (target: Target, place: MaybePixel) => void;
}

export function useMarks(film: FilmState, append: Append): Marks {
  const { value: unfinished, set } = useDraft<Unfinished>(`film.${film.filmId}`, readUnfinished);
  const working = useMemo(() => workingOf(film, unfinished, recall(BALL_MEMORY) ?? ''), [film, unfinished]);
  const keepAll = (all: Unfinished) => {
    const settled = settle(film, all);
    set(settled.unfinished);
    if (settled.events.length > 0) append(settled.events);
    for (const event of settled.events) {
      if (event.kind === 'film-calibrated' && event.payload.calibration.kind === 'ball')
        remember(BALL_MEMORY, String(event.payload.calibration.diameterMm));
    }
  };
  const marked = (target: Target, place: MaybePixel) => withMark(working, unfinished, target, place && tidy(place));
  return {
    working,
    hold: (part) => set({ ...unfinished, ...part }),
    keep: (part) => keepAll({ ...unfinished, ...part }),
    holdMark: (target, place) => set(marked(target, place)),
    keepMark: (target, place) => keepAll(marked(target, place)),
  };
}
