/**
 * Bend and shift of the distal fragment by two clicks on the middle of each fragment: what is left to measure where
 * metal and putty hide the walls. Positive towards medial or cranial.
 */
import { value } from '@bonewright/evidence';
import type { Measured, Pixel, SegmentClicks, Towards } from '../model/trace.ts';

export interface AxisByClicks {
  readonly bendDeg: Measured;
  /** Half way between the inner clicks, across the proximal fragment. */
  readonly shiftMm: Measured;
}

const minus = (a: Pixel, b: Pixel): Pixel => [a[0] - b[0], a[1] - b[1]];
const dot = (a: Pixel, b: Pixel): number => a[0] * b[0] + a[1] * b[1];

/** `segments`: proximal, distal, each from its proximal end; null where a fragment is clicked on one spot. */
export function axisByClicks(
  [proximal, distal]: readonly [SegmentClicks, SegmentClicks],
  columnTowards: Towards,
  mmPerPixel: Measured,
): AxisByClicks | null {
  const [a, b] = [minus(proximal.to, proximal.from), minus(distal.to, distal.from)];
  const [lengthA, lengthB] = [Math.hypot(...a), Math.hypot(...b)];
  if (!(lengthA > 0 && lengthB > 0)) return null;
  const along: Pixel = [a[0] / lengthA, a[1] / lengthA];
  const right = -along[1] >= 0 ? 1 : -1;
  const side = right * (columnTowards === 'medial' || columnTowards === 'cranial' ? 1 : -1);
  const across: Pixel = [-along[1] * side, along[0] * side];
  const clickPx = value('measure.click.sd');
  const bendSd = clickPx * Math.SQRT2 * Math.hypot(1 / lengthA, 1 / lengthB);
  const bendDeg = degrees(Math.atan2(dot(b, across), dot(b, along)));
  return { bendDeg: { value: bendDeg, sd: degrees(bendSd) }, shiftMm: shiftOf(mmPerPixel) };

  /** Both axes run on to half way between the inner clicks; the longer that way, the less sure. */
  function shiftOf({ value: mm, sd, why }: Measured): Measured {
    if (mm === null) return { value: null, sd: null, ...(why === undefined ? {} : { why }) };
    const middle: Pixel = [(proximal.to[0] + distal.from[0]) / 2, (proximal.to[1] + distal.from[1]) / 2];
    const at = (from: Pixel, way: Pixel): number => {
      const run = dot(minus(middle, from), along) / dot(way, along);
      return dot(minus([from[0] + run * way[0], from[1] + run * way[1]], middle), across);
    };
    const px = at(distal.from, b) - at(proximal.to, a);
    const away = Math.abs(dot(minus(middle, proximal.to), along));
    const sdPx = clickPx * Math.hypot(1, 1, (Math.SQRT2 * away) / lengthA, (Math.SQRT2 * away) / lengthB);
    return { value: px * mm, sd: Math.hypot(sdPx * mm, px * (sd ?? 0)) };
  }
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
