/** A grey image as a PNG file, so that what was made of a film is kept as a file like any other. */
import { encode } from 'fast-png';
import type { GreyImage } from '../model/film.ts';

const MOST_IN_A_BYTE = 255;

/** Values are rounded; 8 bits where they fit, else 16. They have to be 0 to 65535. */
export function writePng({ rows, cols, pixels }: GreyImage): Uint8Array {
  const isNarrow = pixels.every((value) => value <= MOST_IN_A_BYTE);
  const data = isNarrow ? new Uint8Array(rows * cols) : new Uint16Array(rows * cols);
  for (let i = 0; i < data.length; i++) data[i] = Math.round(pixels[i]!);
  return encode({ width: cols, height: rows, data, depth: isNarrow ? 8 : 16, channels: 1 });
}
