/**
 * Noise of a pixel near a line, from differences of neighbours: the median, so that edges do not count. Quanta make its
 * variance rise with attenuation, and make the mean of a logarithm lie above the logarithm of the mean.
 */
import type { Attenuation } from './attenuation.ts';
import { type LineFrame, pointAt } from './frame.ts';
import { median } from './start.ts';

export interface PixelNoise {
  readonly sd: number;
  /** Attenuation at which it is that. */
  readonly level: number;
}

/** Median of |difference| to sd, and two pixels to one. */
const TO_SD = 1.4826 / Math.SQRT2;
const LEAST = 1e-9;

export function pixelNoise(film: Attenuation, frame: LineFrame, width: number): PixelNoise {
  const steps: number[] = [];
  const levels: number[] = [];
  const half = Math.ceil(0.8 * width);
  for (let s = 0; s < frame.lengthPx; s += 2) {
    for (let x = -half; x <= half; x += 3) {
      const p = pointAt(frame, s, x);
      const i = Math.round(p[1]) * film.cols + Math.round(p[0]);
      const here = film.values[i];
      const below = film.values[i + film.cols];
      if (here === undefined || below === undefined) continue;
      steps.push(Math.abs(here - below));
      levels.push(here);
    }
  }
  return { sd: Math.max(LEAST, TO_SD * median(steps)), level: median(levels) };
}

/** Beyond this ratio to the noise where it was measured, the law of quanta is not followed. */
const LARGEST_RATIO = 6;

/** Variance of a pixel's noise where the film shows `value`. */
export function noiseVariance(noise: PixelNoise, unitsPerLog: number, value: number): number {
  const ratio = Math.exp((value - noise.level) / unitsPerLog);
  return noise.sd ** 2 * Math.min(LARGEST_RATIO, Math.max(1 / LARGEST_RATIO, ratio));
}

/** By how much noise of that variance raises the mean of a logarithm of the beam. */
export const noiseLift = (variance: number, unitsPerLog: number): number => variance / (2 * unitsPerLog);
