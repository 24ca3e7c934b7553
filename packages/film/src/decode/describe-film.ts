/** What `film FILE` prints, and the bytes its hash is taken over. */
import type { Film } from '../model/film.ts';
import { personalFacts, publicHeader } from './personal.ts';

/** A film as one JSON document, without its pixels, its tables and anybody's name. */
export function describeFilm(film: Film) {
  const { pixels: _, grey, header, ...rest } = film;
  const { modalityTable, voiTables = [], ...values } = grey;
  return {
    ...rest,
    grey: { ...values, modalityTable: modalityTable?.name ?? null, voiTables: voiTables.map((t) => t.name) },
    header: publicHeader(header),
    personalFactsLeftOut: personalFacts(header),
  };
}

/** Stored values as the hash rule wants them: all frames, row by row, one byte each or two in little-endian order. */
export function storedBytes({ pixels }: Film): Uint8Array {
  if (pixels.BYTES_PER_ELEMENT === 1) return new Uint8Array(pixels.buffer, pixels.byteOffset, pixels.length);
  const bytes = new Uint8Array(2 * pixels.length);
  for (let i = 0; i < pixels.length; i++) {
    const value = pixels[i]!;
    bytes[2 * i] = value;
    bytes[2 * i + 1] = value >> 8;
  }
  return bytes;
}
