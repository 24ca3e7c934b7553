/** What of the film shows metal: rising with matter, flat inside thick metal, in pixels about a line. */
import { type Attenuation, sampleAt } from '../trace/attenuation.ts';
import { type LineFrame, pointAt } from '../trace/frame.ts';

/** The signal at s along and x across the line; NaN off the film. */
export type Signal = (s: number, x: number) => number;

/** The attenuation itself. */
export function attenuationAbout(film: Attenuation, frame: LineFrame): Signal {
  return (s, x) => {
    const p = pointAt(frame, s, x);
    return sampleAt(film, p[0], p[1]);
  };
}

/** Where values are logarithms of the beam, the share of it that is gone: steel's edges are steps there. */
export function metalAbout(film: Attenuation, frame: LineFrame): Signal {
  const of = attenuationAbout(film, frame);
  return film.isLogOfBeam ? (s, x) => 1 - Math.exp(-of(s, x)) : of;
}

/** Mean over a stretch across the line, in steps of half a pixel; NaN where any of it is off the film. */
export function meanAcross(signal: Signal, s: number, from: number, to: number): number {
  const n = Math.max(1, Math.round(2 * (to - from)));
  let sum = 0;
  for (let i = 0; i <= n; i++) sum += signal(s, from + (i / n) * (to - from));
  return sum / (n + 1);
}

/** The value that this share of the list lies below. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
