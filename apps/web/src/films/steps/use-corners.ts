/** The four corners of a film in a photograph of it, as they are clicked; kept only until the film is made. */
import type { Corners, Pixel } from '@bonewright/film';
import { useState } from 'react';
import type { Aim } from '../plate/aim.ts';

const WORDS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;

export interface CornerClicks {
  readonly placed: readonly Pixel[];
  /** Null until all four are there. */
  readonly corners: Corners | null;
  /** Null where no corner is wanted. */
  readonly aim: Aim | null;
  /** From the first corner on. */
  readonly start: () => void;
  readonly stop: () => void;
}

export function useCorners(): CornerClicks {
  const [placed, setPlaced] = useState<readonly Pixel[] | null>(null);
  const [a, b, c, d] = placed ?? [];
  const word = placed && WORDS[placed.length];
  return {
    placed: placed ?? [],
    corners: a && b && c && d ? [a, b, c, d] : null,
    aim: word
      ? {
          words: `the ${word} corner of the film, as it should lie`,
          place: (at) => {
            setPlaced([...(placed ?? []), at]);
            return `${word} corner placed`;
          },
        }
      : null,
    start: () => setPlaced([]),
    stop: () => setPlaced(null),
  };
}
