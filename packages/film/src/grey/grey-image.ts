/** One frame of a film as single values: what is measured on, and what is shown. */
import { InputError } from '@bonewright/fault';
import type { Film, GreyImage } from '../model/film.ts';

/** Weights of red, green and blue (ITU-R BT.601-7, 2.5.1). */
const LUMA = [0.299, 0.587, 0.114] as const;

/**
 * Frame `frame` (from 0). A grey film's own values, not copied; of a colour its luma; alpha is left out.
 * @throws InputError where the film has no such frame.
 */
export function greyImage(film: Film, frame = 0): GreyImage {
  const { rows, cols, samplesPerPixel: samples, photometric, grey, bitsStored } = film;
  if (!Number.isInteger(frame) || frame < 0 || frame >= film.frames)
    throw new InputError(`the film has no frame ${frame}`, 'frame', `give 0 to ${film.frames - 1}`);
  const count = rows * cols;
  const values = film.pixels.subarray(frame * count * samples, (frame + 1) * count * samples);
  if (samples === 1) return { rows, cols, pixels: values, photometric, grey, bitsStored };
  const isRgb = samples >= 3 && !photometric.startsWith('YBR_FULL');
  const pixels = values.slice(0, count);
  for (let i = 0; i < count; i++) pixels[i] = isRgb ? luma(values, i * samples) : values[i * samples]!;
  return {
    rows,
    cols,
    pixels,
    photometric: photometric.startsWith('MONOCHROME1') ? 'MONOCHROME1' : 'MONOCHROME2',
    grey,
    bitsStored,
  };
}

const luma = (values: Film['pixels'], at: number): number =>
  Math.round(LUMA[0] * values[at]! + LUMA[1] * values[at + 1]! + LUMA[2] * values[at + 2]!);
