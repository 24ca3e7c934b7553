/** The part of a film that the four clicks mark out. */

import type { Region } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';
import type { FourClicks } from '../marks/working.ts';
import type { Turn } from './turn.ts';
import { type FilmSize, fitting, type Viewport } from './viewport.ts';

/** Room around the clicks, in shares of their distance: to see the bone's ends, and to see nothing but bone. */
export const ROOM_TO_SEE = 0.35;
export const ROOM_FOR_LEVELS = 0.06;
const LEAST_PX = 8;

/** Null until all four are placed, or where they lie on one spot. */
export function boneRegion(clicks: FourClicks, { cols, rows }: FilmSize, roomShare: number): Region | null {
  const placed = clicks.filter((click) => click !== null);
  if (placed.length < clicks.length) return null;
  const x = placed.map(([col]) => col);
  const y = placed.map(([, row]) => row);
  const length = Math.hypot(Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y));
  const room = length * roomShare;
  const region = {
    left: Math.max(0, Math.floor(Math.min(...x) - room)),
    top: Math.max(0, Math.floor(Math.min(...y) - room)),
    right: Math.min(cols, Math.ceil(Math.max(...x) + room)),
    bottom: Math.min(rows, Math.ceil(Math.max(...y) + room)),
  };
  return region.right - region.left < LEAST_PX || region.bottom - region.top < LEAST_PX ? null : region;
}

export function viewOf({ left, top, right, bottom }: Region, plate: Size, turn: Turn): Viewport {
  return {
    centre: [(left + right - 1) / 2, (top + bottom - 1) / 2],
    scale: fitting([right - left, bottom - top], plate, turn),
    turn,
  };
}
