/** The levels of the films side by side: each its own, or linked. */
import { useState } from 'react';
import { AS_OPENED, type Levels } from './looking.ts';

export interface LinkedLevels {
  readonly levels: Levels;
  readonly setLevels: (levels: Levels) => void;
  readonly isLinked: boolean;
  /** Linking, the other film takes the levels of this one. */
  readonly link: (isLinked: boolean) => void;
}

export function useLevels(): (place: 'first' | 'second') => LinkedLevels {
  const [now, set] = useState({ isLinked: false, first: AS_OPENED, second: AS_OPENED });
  return (place) => ({
    levels: now[place],
    isLinked: now.isLinked,
    setLevels: (levels) =>
      set((old) => (old.isLinked ? { ...old, first: levels, second: levels } : { ...old, [place]: levels })),
    link: (isLinked) =>
      set((old) => (isLinked ? { isLinked, first: old[place], second: old[place] } : { ...old, isLinked })),
  });
}
