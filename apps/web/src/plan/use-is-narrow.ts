/** True on a phone: there the plan is for reading. */
import { useSyncExternalStore } from 'react';

const query = () => window.matchMedia('(max-width: 700px)');

function subscribe(tell: () => void): () => void {
  const media = query();
  media.addEventListener('change', tell);
  return () => media.removeEventListener('change', tell);
}

export const useIsNarrow = (): boolean => useSyncExternalStore(subscribe, () => query().matches);
