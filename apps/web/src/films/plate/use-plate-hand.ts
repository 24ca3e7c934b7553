/** What the pointer does on a plate: click to place, drag to move the film, right drag for the window, wheel to zoom. */
import type { Pixel } from '@bonewright/film';
import { type PointerEvent, type RefObject, useEffect, useRef } from 'react';

export interface PlateHand {
  /** Screen places are from the plate's corner. */
  readonly onClick: (at: Pixel) => void;
  readonly onPan: (dx: number, dy: number) => void;
  readonly onWindow: (dx: number, dy: number) => void;
  readonly onZoom: (at: Pixel, factor: number) => void;
}

interface Stroke {
  readonly button: 'main' | 'other';
  x: number;
  y: number;
  isDrag: boolean;
}

/** Below this a press that slipped is still a click. */
const SLIP_PX = 4;
const WHEEL_DOUBLES_PX = 400;

export function usePlateHand(plate: RefObject<HTMLElement | null>, hand: PlateHand) {
  const strokes = useRef(new Map<number, Stroke>());
  const latest = useRef(hand);
  latest.current = hand;

  // React listens to the wheel passively; the page must not scroll under a zoom.
  useEffect(() => {
    const { current } = plate;
    if (!current) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      latest.current.onZoom(placeIn(current, event), 2 ** (-event.deltaY / WHEEL_DOUBLES_PX));
    };
    current.addEventListener('wheel', wheel, { passive: false });
    return () => current.removeEventListener('wheel', wheel);
  }, [plate]);

  return {
    onContextMenu: (event: { preventDefault: () => void }) => event.preventDefault(),
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      const button = event.button === 2 || event.altKey ? 'other' : 'main';
      strokes.current.set(event.pointerId, { button, x: event.clientX, y: event.clientY, isDrag: false });
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const stroke = strokes.current.get(event.pointerId);
      if (!stroke) return;
      if (strokes.current.size === 2) return pinch(event, strokes.current, hand);
      const [dx, dy] = [event.clientX - stroke.x, event.clientY - stroke.y];
      if (!stroke.isDrag && Math.hypot(dx, dy) < SLIP_PX) return;
      stroke.isDrag = true;
      stroke.x = event.clientX;
      stroke.y = event.clientY;
      if (stroke.button === 'main') hand.onPan(dx, dy);
      else hand.onWindow(dx, dy);
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      const stroke = strokes.current.get(event.pointerId);
      strokes.current.delete(event.pointerId);
      if (stroke && !stroke.isDrag && stroke.button === 'main') hand.onClick(placeIn(event.currentTarget, event));
    },
    onPointerCancel: (event: PointerEvent<HTMLElement>) => strokes.current.delete(event.pointerId),
  };
}

/** Two fingers: their distance zooms about their middle, their middle moves the film. */
function pinch(event: PointerEvent<HTMLElement>, strokes: Map<number, Stroke>, hand: PlateHand): void {
  const moved = strokes.get(event.pointerId);
  const other = [...strokes].find(([id]) => id !== event.pointerId)?.[1];
  if (!moved || !other) return;
  const before = Math.hypot(moved.x - other.x, moved.y - other.y);
  const after = Math.hypot(event.clientX - other.x, event.clientY - other.y);
  const box = event.currentTarget.getBoundingClientRect();
  const middle: Pixel = [(event.clientX + other.x) / 2 - box.left, (event.clientY + other.y) / 2 - box.top];
  hand.onPan((event.clientX - moved.x) / 2, (event.clientY - moved.y) / 2);
  if (before > 0 && after > 0) hand.onZoom(middle, after / before);
  moved.x = event.clientX;
  moved.y = event.clientY;
  moved.isDrag = true;
  other.isDrag = true;
}

/** A place on the screen, from the corner of the element. */
export function placeIn(element: HTMLElement, event: { readonly clientX: number; readonly clientY: number }): Pixel {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}
