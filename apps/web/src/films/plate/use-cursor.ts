/** The crosshair that the arrow keys move, in screen pixels from the plate's corner; it begins in the middle. */
import type { Pixel } from '@bonewright/film';
import { useState } from 'react';
import type { Size } from '../../drawing/use-size.ts';

export interface Cursor {
  /** Null while it is put away. */
  readonly shown: Pixel | null;
  /** Where it is, or would be. */
  readonly at: Pixel;
  readonly step: (dx: number, dy: number) => void;
  readonly putAway: () => void;
}

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));

export function useCursor(plate: Size): Cursor {
  const [shown, show] = useState<Pixel | null>(null);
  const at = shown ?? [plate.width / 2, plate.height / 2];
  return {
    shown,
    at,
    step: (dx, dy) => show([within(at[0] + dx, plate.width), within(at[1] + dy, plate.height)]),
    putAway: () => show(null),
  };
}
