/** Reads the size and the tile parts of a JPEG 2000 codestream (ITU-T T.800 annex A), before any codec does. */
import { viewOf } from '../bytes.ts';
import { MOST_JPEG_2000_TILES } from '../limits.ts';
import { damagedAt, type StreamHeader } from './stream-header.ts';

const START_AND_SIZE = 0xff4fff51;
const SIZ_AT = 2;
const COMPONENTS_AT = 42;
const TILE_PART = 0xff90;
const TILE_PART_LEAST_BYTES = 14;
const END_OF_CODESTREAM = 0xffd9;
const JP2_SIGNATURE = 0x6a502020;
const JP2_CODESTREAM = 0x6a703263;
const BOX_HEADER_BYTES = 8;

/** The start of a codestream and of the size that must follow it: two bytes alone occur within packed data too. */
export const startsJpeg2000 = (bytes: Uint8Array): boolean =>
  bytes.length >= 4 && viewOf(bytes).getUint32(0) === START_AND_SIZE;

/** The bare codestream: some writers leave the boxes of a JP2 file around it. */
export function jpeg2000Codestream(bytes: Uint8Array, where: string): Uint8Array {
  if (startsJpeg2000(bytes)) return bytes;
  const view = viewOf(bytes);
  const isJp2 = bytes.length > BOX_HEADER_BYTES && view.getUint32(4) === JP2_SIGNATURE;
  for (let at = 0; isJp2 && at + BOX_HEADER_BYTES < bytes.length; ) {
    const length = view.getUint32(at);
    const box = bytes.subarray(at + BOX_HEADER_BYTES, length === 0 ? undefined : at + length);
    if (view.getUint32(at + 4) === JP2_CODESTREAM && startsJpeg2000(box)) return box;
    if (length < BOX_HEADER_BYTES) break;
    at += length;
  }
  throw damagedAt('the pixel data does not begin as a JPEG 2000 stream', where, 0);
}

/** Reads the SIZ segment, which stands first, and follows the tile parts to the end of the stream. */
export function readJpeg2000Header(bytes: Uint8Array, where: string): StreamHeader {
  const view = viewOf(bytes);
  if (bytes.length < COMPONENTS_AT + 3) throw damagedAt('the JPEG 2000 header is damaged', where, SIZ_AT);
  const [right, bottom, left, top, tileWidth, tileHeight, tileLeft, tileTop] = eightNumbers(view);
  const samples = view.getUint16(COMPONENTS_AT - 2);
  const components = bytes.subarray(COMPONENTS_AT, COMPONENTS_AT + 3 * samples);
  if (components.some((b, i) => (i % 3 === 0 ? b !== components[0] : b !== 1)))
    throw damagedAt('the samples of the JPEG 2000 stream differ in precision or size', where, COMPONENTS_AT);
  const isLaidOut = [
    [left, right, tileLeft, tileWidth],
    [top, bottom, tileTop, tileHeight],
  ].every(([from = 0, to = 0, tile = 0, size = 0]) => from < to && tile <= from && tile + size > from);
  const tiles = isLaidOut ? Math.ceil((right - tileLeft) / tileWidth) * Math.ceil((bottom - tileTop) / tileHeight) : 0;
  if (tiles < 1 || tiles > MOST_JPEG_2000_TILES)
    throw damagedAt(`the JPEG 2000 header claims ${tiles} tiles`, where, COMPONENTS_AT);
  checkTileParts(view, tiles, where);
  return { rows: bottom - top, cols: right - left, samples, precision: ((components[0] ?? 0) & 0x7f) + 1 };
}

type Eight = [number, number, number, number, number, number, number, number];

const eightNumbers = (view: DataView): Eight => {
  const at = (i: number) => view.getUint32(8 + 4 * i);
  return [at(0), at(1), at(2), at(3), at(4), at(5), at(6), at(7)];
};

/** Each tile part says its tile and its length: they must end with the stream, no tile left out. */
function checkTileParts(view: DataView, tiles: number, where: string): void {
  let at = SIZ_AT;
  while (at + 4 <= view.byteLength && view.getUint16(at) !== TILE_PART) at += 2 + view.getUint16(at + 2);
  const seen = new Set<number>();
  while (at + TILE_PART_LEAST_BYTES <= view.byteLength && view.getUint16(at) === TILE_PART) {
    seen.add(view.getUint16(at + 4));
    const length = view.getUint32(at + 6) || view.byteLength - at;
    if (length < TILE_PART_LEAST_BYTES || at + length > view.byteLength)
      throw damagedAt('a tile of the JPEG 2000 stream is cut short', where, at);
    at += length;
  }
  if (seen.size !== tiles) throw damagedAt(`the JPEG 2000 stream holds ${seen.size} of ${tiles} tiles`, where, at);
  if (at + 2 <= view.byteLength && view.getUint16(at) !== END_OF_CODESTREAM)
    throw damagedAt('the JPEG 2000 stream goes on where it should end', where, at);
}
