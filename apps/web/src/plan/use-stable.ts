/** A function that stays the same one and does what the latest did: what takes it is not drawn again for it. */
import { useCallback, useRef } from 'react';

export function useStable<A extends unknown[], R>(act: (...args: A) => R): (...args: A) => R {
  const latest = useRef(act);
  latest.current = act;
  return useCallback((...args: A) => latest.current(...args), []);
}
