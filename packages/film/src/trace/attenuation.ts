/**
 * Stored values to attenuation: higher means more matter in the beam, in proportion to the path through it.
 * LIN values are taken back to the logarithm of the beam; LOG and unmarked values are proportional already.
 */
import type { GreyImage } from '../model/film.ts';
import { gainFromNoise } from './gain.ts';

/** One frame of attenuation, row by row. */
export interface Attenuation {
  readonly rows: number;
  readonly cols: number;
  readonly values: Float32Array;
  /** True where `values` are natural logarithms of the beam, so that exp(-value) is the beam itself. */
  readonly isLogOfBeam: boolean;
  /** Values to one natural logarithm of the beam, as far as the film shows it. */
  readonly unitsPerLog: number | null;
}

/** Attenuation of a film of any photometric interpretation, intensity sign and relationship. */
export function attenuation(image: GreyImage): Attenuation {
  const { rows, cols, pixels } = image;
  const n = rows * cols;
  const values = new Float32Array(n);
  const higherIsMore = risesWithMatter(image);
  const isLogOfBeam = image.grey?.intensityRelationship === 'LIN';
  if (!isLogOfBeam) {
    const sign = higherIsMore ? 1 : -1;
    for (let i = 0; i < n; i++) values[i] = sign * pixels[i]!;
    return { rows, cols, values, isLogOfBeam, unitsPerLog: gainFromNoise(values, cols) };
  }
  const top = image.bitsStored ? 2 ** image.bitsStored - 1 : fullScale(pixels, n);
  for (let i = 0; i < n; i++) {
    const beam = higherIsMore ? top - pixels[i]! : pixels[i]!;
    values[i] = Math.log(top / Math.max(beam, 1));
  }
  return { rows, cols, values, isLogOfBeam, unitsPerLog: 1 };
}

/** The header's intensity sign decides; without one, what is shown white is taken as more matter. */
function risesWithMatter(image: GreyImage): boolean {
  const sign = image.grey?.intensitySign;
  if (sign === 1 || sign === -1) return sign === -1;
  return image.photometric.trim() !== 'MONOCHROME1';
}

/** The smallest full scale of whole bits that holds every value: where a linear detector's beam of zero or all lies. */
function fullScale(pixels: GreyImage['pixels'], n: number): number {
  let max = 1;
  for (let i = 0; i < n; i++) if (pixels[i]! > max) max = pixels[i]!;
  return 2 ** Math.ceil(Math.log2(max + 1)) - 1;
}

/** Bilinear value at [column, row]; NaN outside the film. */
export function sampleAt(a: Attenuation, col: number, row: number): number {
  const c = Math.floor(col);
  const r = Math.floor(row);
  if (c < 0 || r < 0 || c + 1 >= a.cols || r + 1 >= a.rows) return Number.NaN;
  const u = col - c;
  const v = row - r;
  const i = r * a.cols + c;
  const { values } = a;
  return (
    (values[i]! * (1 - u) + values[i + 1]! * u) * (1 - v) +
    (values[i + a.cols]! * (1 - u) + values[i + a.cols + 1]! * u) * v
  );
}
