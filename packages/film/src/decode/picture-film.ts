/** A plain picture (PNG, TIFF, JPEG) as a film: values as they are, no scale, nothing known of the patient. */
import type { Film } from '../model/film.ts';

export interface Picture {
  readonly format: 'png' | 'tiff' | 'jpeg';
  readonly rows: number;
  readonly cols: number;
  /** 1 grey, 2 grey and alpha, 3 colour, 4 colour and alpha. */
  readonly samples: number;
  readonly pixels: Film['pixels'];
  /** The lowest value is white, as a TIFF may say. */
  readonly lowIsWhite?: boolean;
}

const NO_SCALE = 'a plain picture carries no scale and no patient: calibrate it, and check that it is not mirrored';
const COLOUR = 'a colour picture: grey values are made from its colours, their meaning is unknown';

export function pictureFilm(
  { format, rows, cols, samples, pixels, lowIsWhite = false }: Picture,
  header: Record<string, string>,
  warnings: readonly string[],
): Omit<Film, 'min' | 'max'> {
  const bits = 8 * pixels.BYTES_PER_ELEMENT;
  const grey = lowIsWhite ? 'MONOCHROME1' : 'MONOCHROME2';
  const isSigned = pixels instanceof Int16Array || pixels instanceof Int8Array;
  return {
    format,
    rows,
    cols,
    frames: 1,
    samplesPerPixel: samples,
    bitsAllocated: bits,
    bitsStored: bits,
    pixelRepresentation: isSigned ? 1 : 0,
    photometric: (samples < 3 ? grey : 'RGB') + (samples % 2 === 0 ? ' and alpha' : ''),
    transferSyntax: null,
    spacing: null,
    pixels,
    grey: {
      slope: 1,
      intercept: 0,
      windows: [],
      voiFunction: 'LINEAR',
      intensitySign: null,
      intensityRelationship: null,
    },
    header,
    warnings: [NO_SCALE, ...(samples > 2 ? [COLOUR] : []), ...warnings],
  };
}
