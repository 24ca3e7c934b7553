/** Reads the header of a JPEG (ITU-T T.81 annex B) or JPEG-LS (T.87 annex C) stream, before any codec does. */
import { viewOf } from '../bytes.ts';
import { damagedAt, type StreamHeader } from './stream-header.ts';

export interface JpegHeader extends StreamHeader {
  /** The number of the start-of-frame marker: 0 baseline, 1 extended, 2 progressive, 3 lossless, 55 JPEG-LS. */
  readonly process: number;
}

const SOF_FIRST = 0xc0;
const SOF_LAST = 0xcf;
const SOF_JPEG_LS = 0xf7;
const NOT_SOF = new Set([0xc4, 0xc8, 0xcc]);
const SOF_LEAST_BYTES = 8;
const START_OF_SCAN = 0xda;
const RESTART = 0xd0;
const END_OF_IMAGE = 0xd9;
const LS_EXTENSION = 0xf8;
const LS_OVERSIZE = 4;

export const startsJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8;

/** The frame header. @throws InputError with the byte of the stream that is wrong. */
export function readJpegHeader(bytes: Uint8Array, where: string): JpegHeader {
  for (const { marker, at, segment } of jpegSegments(bytes, where)) {
    if (marker === LS_EXTENSION && segment.getUint8(0) === LS_OVERSIZE)
      throw damagedAt('the JPEG-LS stream is of a size that is not read', where, at);
    const isFrame = marker >= SOF_FIRST && marker <= SOF_LAST && !NOT_SOF.has(marker);
    if (!isFrame && marker !== SOF_JPEG_LS) continue;
    if (segment.byteLength < SOF_LEAST_BYTES - 2) break;
    return {
      precision: segment.getUint8(0),
      rows: segment.getUint16(1),
      cols: segment.getUint16(3),
      samples: segment.getUint8(5),
      process: marker - SOF_FIRST,
    };
  }
  throw damagedAt('the JPEG stream does not say the size of its picture', where, 0);
}

export interface JpegSegment {
  readonly marker: number;
  readonly at: number;
  /** What follows the segment's length. */
  readonly segment: DataView;
}

/** The segments before the first scan, in order. */
export function* jpegSegments(bytes: Uint8Array, where: string): Generator<JpegSegment> {
  if (!startsJpeg(bytes)) throw damagedAt('the pixel data does not begin as a JPEG stream', where, 0);
  const view = viewOf(bytes);
  for (let at = 2; ; ) {
    if (at + 4 > bytes.length) throw damagedAt('the JPEG stream ends within its header', where, at);
    if (view.getUint8(at) !== 0xff) throw damagedAt('the JPEG header is damaged', where, at);
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === START_OF_SCAN) return;
    if (!hasLength(marker)) throw damagedAt('the JPEG header is damaged', where, at);
    const length = view.getUint16(at + 2);
    if (length < 3 || at + 2 + length > bytes.length)
      throw damagedAt('a part of the JPEG header runs past its end', where, at);
    yield { marker, at, segment: new DataView(bytes.buffer, bytes.byteOffset + at + 4, length - 2) };
    at += 2 + length;
  }
}

/** Restarts, start, end and reserved markers stand alone; within a header they are damage, and a codec may walk them for ever. */
const hasLength = (marker: number): boolean => marker >= SOF_FIRST && !(marker >= RESTART && marker <= END_OF_IMAGE);

/** True where the end-of-image marker stands within the last bytes: writers pad in their own ways. */
export function endsJpeg(bytes: Uint8Array): boolean {
  const tail = bytes.subarray(-8);
  return tail.some((b, i) => b === 0xff && tail[i + 1] === 0xd9);
}
