/** One door for every format: looks at the first bytes, never at the name's ending, and hands on. */
import { InputError } from '@bonewright/fault';
import type { Film } from '../model/film.ts';
import { startsJpeg } from './compressed/jpeg-header.ts';
import { decodeDicom } from './dicom/decode-dicom.ts';
import { isPart10 } from './dicom/elements.ts';
import { decodeJpeg } from './jpeg.ts';
import { LARGEST_FILE_BYTES } from './limits.ts';
import { decodePng, isPng } from './png.ts';
import { decodeTiff, isTiff } from './tiff/decode-tiff.ts';

/**
 * Decodes a film: DICOM part 10, PNG, TIFF or JPEG.
 * @param bytes the whole file. @param name what the user calls it, for words only.
 * @throws InputError for anything that is not a whole and consistent film; other errors are faults of ours.
 */
export async function decodeFilm(bytes: Uint8Array, name: string): Promise<Film> {
  if (bytes.length === 0) throw new InputError(`${name} is empty`, '', 'give a film');
  if (bytes.length > LARGEST_FILE_BYTES)
    throw new InputError(`${name} has ${bytes.length} bytes`, '', `give a film of at most ${LARGEST_FILE_BYTES}`);
  // A Buffer of Node's hands out views where an array hands out copies: below this line it is an array.
  const plain = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const film = await decodeByKind(plain, name);
  return { ...film, ...range(film.pixels) };
}

/** Whether the first bytes are of a kind that is decoded here; the rest may still be refused. */
export const isFilmKind = (bytes: Uint8Array): boolean =>
  isPart10(bytes) || isPng(bytes) || isTiff(bytes) || startsJpeg(bytes);

async function decodeByKind(bytes: Uint8Array, name: string): Promise<Omit<Film, 'min' | 'max'>> {
  if (isPart10(bytes)) return decodeDicom(bytes);
  if (isPng(bytes)) return decodePng(bytes);
  if (isTiff(bytes)) return decodeTiff(bytes);
  if (startsJpeg(bytes)) return decodeJpeg(bytes);
  throw new InputError(`${name} is no DICOM, PNG, TIFF or JPEG file`, 'byte 0', 'export the film as DICOM part 10');
}

function range(pixels: Film['pixels']): { min: number; max: number } {
  let min = pixels[0] ?? 0;
  let max = min;
  for (let i = 1; i < pixels.length; i++) {
    const value = pixels[i]!;
    if (value < min) min = value;
    else if (value > max) max = value;
  }
  return { min, max };
}
