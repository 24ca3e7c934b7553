/** The size an element has on the page, in whole pixels, kept up to date. */
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize<E extends Element>(): readonly [RefObject<E | null>, Size] {
  const element = useRef<E>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const { current } = element;
    if (!current) return;
    const read = ({ width, height }: Size) => setSize({ width: Math.floor(width), height: Math.floor(height) });
    const watch = new ResizeObserver(([entry]) => entry && read(entry.contentRect));
    watch.observe(current);
    read(current.getBoundingClientRect());
    return () => watch.disconnect();
  }, []);
  return [element, size];
}
