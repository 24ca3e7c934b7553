/** Noise of a pixel near a line, from differences of neighbours: the median, so that edges do not count. */
import type { Attenuation } from './attenuation.ts';
import { type LineFrame, pointAt } from './frame.ts';
import { median } from './start.ts';

/** Median of |difference| to sd, and two pixels to one. */
const TO_SD = 1.4826 / Math.SQRT2;
const LEAST = 1e-9;

export function pixelNoise(film: Attenuation, frame: LineFrame, width: number): number {
  const steps: number[] = [];
  const half = Math.ceil(0.8 * width);
  for (let s = 0; s < frame.lengthPx; s += 2) {
    for (let x = -half; x <= half; x += 3) {
      const p = pointAt(frame, s, x);
      const i = Math.round(p[1]) * film.cols + Math.round(p[0]);
      const here = film.values[i];
      const below = film.values[i + film.cols];
      if (here !== undefined && below !== undefined) steps.push(Math.abs(here - below));
    }
  }
  return Math.max(LEAST, TO_SD * median(steps));
}
