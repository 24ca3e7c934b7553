/** A new page begins at its top, and a screen reader begins with its work. */
import { useEffect, useRef } from 'react';
import { useLocation } from 'wouter';

export function useArrival(): void {
  const [place] = useLocation();
  const last = useRef(place);
  useEffect(() => {
    if (last.current === place) return;
    last.current = place;
    scrollTo(0, 0);
    document.getElementById('main')?.focus({ preventScroll: true });
  }, [place]);
}
