/** A straight line on the film and the coordinates square to it: s along, x across (the line turned by +90 degrees). */
import type { Pixel } from '../model/trace.ts';

export interface LineFrame {
  readonly from: Pixel;
  readonly to: Pixel;
  readonly lengthPx: number;
  /** Unit vector along; across is [-alongRow, alongCol]. */
  readonly along: Pixel;
  readonly across: Pixel;
}

export function lineFrame(from: Pixel, to: Pixel): LineFrame {
  const lengthPx = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Pixel = [(to[0] - from[0]) / lengthPx, (to[1] - from[1]) / lengthPx];
  return { from, to, lengthPx, along, across: [-along[1], along[0]] };
}

/** Where s along and x across lie on the film. */
export function pointAt(f: LineFrame, s: number, x: number): Pixel {
  return [f.from[0] + s * f.along[0] + x * f.across[0], f.from[1] + s * f.along[1] + x * f.across[1]];
}

/** [s, x] of a point of the film. */
export function coordinatesOf(f: LineFrame, p: Pixel): Pixel {
  const dc = p[0] - f.from[0];
  const dr = p[1] - f.from[1];
  return [dc * f.along[0] + dr * f.along[1], dc * f.across[0] + dr * f.across[1]];
}
