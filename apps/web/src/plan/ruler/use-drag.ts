/** Following the hand: what was true when it took hold, and how far it has gone since, in pixels. */
import { type PointerEvent, useRef } from 'react';

interface Held<T> {
  readonly start: T;
  readonly x: number;
  readonly y: number;
}

export interface DragHandlers {
  readonly onPointerDown: (event: PointerEvent<Element>) => void;
  readonly onPointerMove: (event: PointerEvent<Element>) => void;
  readonly onPointerUp: (event: PointerEvent<Element>) => void;
}

/** `take` is asked once, when the hand takes hold; `follow` with every move. */
export function useDrag<T>(
  take: (event: PointerEvent<Element>) => T,
  follow: (start: T, rightPx: number, downPx: number) => void,
): DragHandlers {
  const held = useRef<Held<T> | null>(null);
  return {
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      held.current = { start: take(event), x: event.clientX, y: event.clientY };
    },
    onPointerMove: (event) => {
      const from = held.current;
      if (from && event.currentTarget.hasPointerCapture(event.pointerId))
        follow(from.start, event.clientX - from.x, event.clientY - from.y);
    },
    onPointerUp: () => {
      held.current = null;
    },
  };
}
