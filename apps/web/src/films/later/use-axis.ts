/** Two clicks on the middle of each fragment of a later film: its bend where metal hides the walls. */
import type { FilmState } from '@bonewright/casebook';
import type { Towards } from '@bonewright/film';
import { useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import { type MaybePixel, readPixels } from '../marks/pixel.ts';
import { TARGET_WORDS, tidy } from '../marks/target.ts';
import type { FourClicks } from '../marks/working.ts';
import type { Aim } from '../plate/aim.ts';

export interface Axis {
  readonly clicks: FourClicks;
  readonly aim: Aim | null;
  readonly isAsking: boolean;
  readonly start: () => void;
  readonly stop: () => void;
}

const CLICKS = ['click-1', 'click-2', 'click-3', 'click-4'] as const;
const NONE: readonly MaybePixel[] = [];
const readClicks = (kept: unknown): readonly MaybePixel[] => readPixels(kept, CLICKS.length);

export function useAxis(film: FilmState, towards: Towards | null, append: Append): Axis {
  const draft = useDraft(`later.axis.${film.filmId}`, readClicks);
  const [isAsking, ask] = useState(false);
  const placed = draft.value.filter((at) => at !== null);
  const next = CLICKS[placed.length];
  const recorded = film.clicks?.value.segments.flatMap(({ from, to }) => [from, to]) ?? NONE;
  const [a = null, b = null, c = null, d = null] = isAsking ? placed : recorded;
  return {
    clicks: [a, b, c, d],
    isAsking,
    start: () => {
      draft.clear();
      ask(true);
    },
    stop: () => ask(false),
    aim:
      isAsking && next && towards
        ? {
            words: TARGET_WORDS[next],
            place: (at) => {
              const [p, q, r, s] = [...placed, tidy(at)];
              if (!p || !q || !r || !s) {
                draft.set([p ?? null, q ?? null, r ?? null, s ?? null]);
                return `${TARGET_WORDS[next]}, placed`;
              }
              const segments = [
                { name: 'proximal', from: p, to: q },
                { name: 'distal', from: r, to: s },
              ];
              append([{ kind: 'film-clicked', payload: { filmId: film.filmId, segments, columnTowards: towards } }]);
              draft.clear();
              ask(false);
              return 'the bend is measured';
            },
          }
        : null,
  };
}
