/** How the drawing in space is seen, and what keys change of it. */
import type { Eye } from '../../drawing/geometry/space/eye.ts';

export interface View {
  readonly eye: Eye;
  readonly zoom: number;
  readonly isFaded: boolean;
  readonly hasSkin: boolean;
}

export const START: View = { eye: { turnDeg: 24, leanDeg: 12 }, zoom: 1, isFaded: false, hasSkin: false };

const STEP_DEG = 10;
const MOST_LEAN_DEG = 85;
export const ZOOM_STEP = 1.2;
const LEAST_ZOOM = 0.5;
const MOST_ZOOM = 12;

/** Turned to the right and leaned down from where the eye was, in degrees. */
export function turned(view: View, from: Eye, rightDeg: number, downDeg: number): View {
  const leanDeg = Math.min(MOST_LEAN_DEG, Math.max(-MOST_LEAN_DEG, from.leanDeg + downDeg));
  return { ...view, eye: { turnDeg: from.turnDeg - rightDeg, leanDeg } };
}

export const zoomed = (view: View, factor: number): View => ({
  ...view,
  zoom: Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, view.zoom * factor)),
});

/** The view after the key; null where the key means nothing here. */
export function keyed(view: View, key: string): View | null {
  switch (key) {
    case 'ArrowLeft':
      return turned(view, view.eye, -STEP_DEG, 0);
    case 'ArrowRight':
      return turned(view, view.eye, STEP_DEG, 0);
    case 'ArrowUp':
      return turned(view, view.eye, 0, -STEP_DEG);
    case 'ArrowDown':
      return turned(view, view.eye, 0, STEP_DEG);
    case '+':
    case '=':
      return zoomed(view, ZOOM_STEP);
    case '-':
      return zoomed(view, 1 / ZOOM_STEP);
    case 'f':
    case 'F':
      return { ...view, isFaded: !view.isFaded };
    case 's':
    case 'S':
      return { ...view, hasSkin: !view.hasSkin };
    case 'Home':
      return { ...view, eye: START.eye, zoom: START.zoom };
    default:
      return null;
  }
}
