/** The theme's colours for a drawing that the browser cannot recolour by itself; read again when the theme changes. */
import { type RefObject, useLayoutEffect, useState } from 'react';
import { type Inks, inksOf } from './paint.ts';

export function useInks(element: RefObject<Element | null>): Inks | null {
  const [inks, setInks] = useState<Inks | null>(null);
  useLayoutEffect(() => {
    const read = () => element.current && setInks(inksOf(element.current));
    read();
    const watch = new MutationObserver(read);
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    return () => watch.disconnect();
  }, [element]);
  return inks;
}
