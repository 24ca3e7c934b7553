/** The first time a case with a known drawer is planned, the search starts by itself. */
import type { CaseState } from '@bonewright/casebook';
import { useEffect, useRef } from 'react';

export function useFirstSearch({ drawer, ranking, construct }: CaseState, rank: () => void): void {
  const isDone = useRef(false);
  const now = useRef(rank);
  now.current = rank;
  const isFirst = drawer !== null && ranking === null && construct === null;
  useEffect(() => {
    if (!isFirst || isDone.current) return;
    isDone.current = true;
    now.current();
  }, [isFirst]);
}
