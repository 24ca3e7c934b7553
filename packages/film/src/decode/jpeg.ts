/** A JPEG picture, grey or colour: a phone photograph of a film, or an export. Decoded as it is stored, never turned. */
import { InputError } from '@bonewright/fault';
import type { Film } from '../model/film.ts';
import { latin1 } from './bytes.ts';
import { decodeFrame } from './compressed/codecs.ts';
import { endsJpeg, type JpegSegment, jpegSegments, readJpegHeader } from './compressed/jpeg-header.ts';
import { EXPORT_AGAIN } from './limits.ts';
import { pictureFilm } from './picture-film.ts';
import { checkSize } from './size-check.ts';

const WHERE = 'the JPEG stream';
const LOSSY = 'a JPEG keeps 8 bits and loses fine detail: lengths and edges are of low trust';

/** @throws InputError with the byte of the stream that is wrong. */
export async function decodeJpeg(bytes: Uint8Array): Promise<Omit<Film, 'min' | 'max'>> {
  const head = readJpegHeader(bytes, WHERE);
  checkSize({ ...head, frames: 1 }, WHERE);
  if (head.samples !== 1 && head.samples !== 3)
    throw new InputError(`the JPEG has ${head.samples} samples a pixel`, WHERE, 'save it in grey or RGB');
  if (head.precision !== 8)
    throw new InputError(
      `the JPEG has ${head.precision} bits a sample`,
      WHERE,
      'save it with 8 bits, or as DICOM or PNG',
    );
  const isColour = head.samples === 3;
  const { bytes: pixels, remarks } = await decodeFrame(
    'jpeg',
    bytes,
    {
      ...head,
      bitsAllocated: 8,
      bitsStored: 8,
      signed: false,
      photometric: isColour ? 'YBR_FULL' : 'MONOCHROME2',
      toRgb: isColour,
    },
    WHERE,
  );
  if (pixels.length !== head.rows * head.cols * head.samples)
    throw new InputError(`the JPEG unpacks to ${pixels.length} bytes`, WHERE, EXPORT_AGAIN);
  const orientation = exifOrientation([...jpegSegments(bytes, WHERE)]);
  return pictureFilm(
    { format: 'jpeg', rows: head.rows, cols: head.cols, samples: head.samples, pixels },
    orientation ? { orientation: String(orientation) } : {},
    [
      LOSSY,
      ...(orientation > 1 ? ['the camera says the picture is turned or mirrored: it is read as stored'] : []),
      ...(endsJpeg(bytes) ? [] : ['the JPEG lacks its end mark: look at its last rows']),
      ...remarks.map((r) => `the decoder says: ${r}`),
    ],
  );
}

const APP1 = 0xe1;
const EXIF = 'Exif\0\0';
const TIFF_AT = EXIF.length;
const ORIENTATION_TAG = 0x0112;

/** The camera's orientation mark, 1 to 8 (Exif 2.3, 4.6.4); 0 where there is none. */
function exifOrientation(segments: readonly JpegSegment[]): number {
  for (const { marker, segment } of segments) {
    if (marker !== APP1 || segment.byteLength < TIFF_AT + 8) continue;
    if (latin1(new Uint8Array(segment.buffer, segment.byteOffset, TIFF_AT)) !== EXIF) continue;
    const littleEndian = segment.getUint16(TIFF_AT) === 0x4949;
    const directory = TIFF_AT + segment.getUint32(TIFF_AT + 4, littleEndian);
    if (directory + 2 > segment.byteLength) return 0;
    const entries = segment.getUint16(directory, littleEndian);
    for (let i = 0; i < entries; i++) {
      const entry = directory + 2 + 12 * i;
      if (entry + 12 > segment.byteLength) return 0;
      if (segment.getUint16(entry, littleEndian) !== ORIENTATION_TAG) continue;
      const value = segment.getUint16(entry + 8, littleEndian);
      return value >= 1 && value <= 8 ? value : 0;
    }
  }
  return 0;
}
