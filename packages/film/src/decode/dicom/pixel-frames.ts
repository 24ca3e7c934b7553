/**
 * The bytes of each frame as they lie in the file (PS3.5 section 8.2 and annex A.4): native data cut by size,
 * compressed data put together from its fragments. Every length is checked against the header and the file.
 */
import { InputError } from '@bonewright/fault';
import type { Element } from 'dicom-parser';
import { joined, viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import type { DataSet } from './elements.ts';
import type { ImageHeader } from './image-header.ts';
import { swapPairs } from './stored-values.ts';
import { placeOf } from './tags.ts';

export const UNDEFINED_LENGTH = 0xffffffff;
const ITEM = 0xe000;
const SEQUENCE_END = 0xe0dd;
const ITEM_HEADER_BYTES = 8;

/** All frames of uncompressed data, one after the other. Spare bytes below one row of pixels are cut off and reported. */
export function nativePixels(set: DataSet, element: Element, header: ImageHeader, warnings: string[]): Uint8Array {
  const place = placeOf('PixelData');
  if (header.photometric === 'YBR_FULL_422')
    throw new InputError('uncompressed colour at half resolution is not read', place, 'export the film in grey or RGB');
  if (element.length === UNDEFINED_LENGTH)
    throw new InputError(
      'the pixels are in compressed form, the transfer syntax says they are not',
      place,
      EXPORT_AGAIN,
    );
  const needed = header.frameBytes * header.frames;
  const there = Math.min(element.length, set.bytes.length - element.dataOffset);
  if (there < needed || there < element.length)
    throw new InputError(
      `the pixel data ends after ${there} of ${Math.max(needed, element.length)} bytes`,
      place,
      EXPORT_AGAIN,
    );
  const whole = inOrder(set.bytes.subarray(element.dataOffset, element.dataOffset + there), set, header, element.vr);
  const pixels = whole.subarray(0, needed);
  const spare = whole.subarray(needed);
  if (spare.length > 1) {
    if (!isPadding(spare, pixels, header.frameBytes / header.rows))
      throw new InputError(
        `the pixel data holds ${element.length} bytes, its header describes ${needed}`,
        place,
        EXPORT_AGAIN,
      );
    warnings.push(`${spare.length} bytes after the last pixel were left out`);
  }
  return pixels;
}

/** Eight-bit samples written as words of a big-endian file lie in swapped pairs, the padding byte in the last (PS3.5 annex A.3). */
function inOrder(bytes: Uint8Array, set: DataSet, header: ImageHeader, vr: string | undefined): Uint8Array {
  if (set.littleEndian || header.bitsAllocated === 16 || vr !== 'OW') return bytes;
  const swapped = bytes.slice();
  swapPairs(swapped);
  return swapped;
}

/** Less than a row; or more, but plainly black where the last row is not: else a row or column may be missing in the header. */
function isPadding(spare: Uint8Array, pixels: Uint8Array, rowBytes: number): boolean {
  if (spare.length < rowBytes) return true;
  return spare.every((b) => b === 0) && pixels.subarray(-rowBytes).some((b) => b !== 0);
}

/** One byte array for each frame of compressed data; `startsFrame` knows the first bytes of a frame. */
export function compressedFrames(
  set: DataSet,
  element: Element,
  frames: number,
  startsFrame: (bytes: Uint8Array) => boolean,
  warnings: string[],
): Uint8Array[] {
  if (element.length !== UNDEFINED_LENGTH)
    throw new InputError(
      'the pixels are not in the compressed form the transfer syntax says',
      placeOf('PixelData'),
      EXPORT_AGAIN,
    );
  const [table, ...fragments] = readFragments(set.bytes, element.dataOffset);
  if (!table || fragments.length === 0)
    throw new InputError('the pixel data is empty', placeOf('PixelData'), EXPORT_AGAIN);
  if (frames === 1) {
    const pictures = fragments.filter((f) => startsFrame(f.bytes)).length;
    if (pictures > 1) throw notFrames(`${pictures} pictures`, frames);
    return [joined(fragments.map((f) => f.bytes))];
  }
  const starts = frameStarts(fragments, offsetTable(table.bytes), frames, startsFrame, warnings);
  return starts.map((from, i) => joined(fragments.slice(from, starts[i + 1]).map((f) => f.bytes)));
}

/** Where compressed data that begins at `start` ends, its delimiter included. */
export function endOfFragments(bytes: Uint8Array, start: number): number {
  const items = readFragments(bytes, start);
  return items.reduce((at, item) => at + ITEM_HEADER_BYTES + item.bytes.length, start) + ITEM_HEADER_BYTES;
}

interface Fragment {
  /** Where its item begins, counted from the end of the offset table. */
  readonly offset: number;
  readonly bytes: Uint8Array;
}

/** The items up to the delimiter, the offset table first. */
function readFragments(bytes: Uint8Array, start: number): Fragment[] {
  const view = viewOf(bytes);
  const items: Fragment[] = [];
  let first = start;
  for (let at = start; ; ) {
    if (at + ITEM_HEADER_BYTES > bytes.length) throw cutShort(at);
    const isItemGroup = view.getUint16(at, true) === 0xfffe;
    const kind = view.getUint16(at + 2, true);
    const length = view.getUint32(at + 4, true);
    if (isItemGroup && kind === SEQUENCE_END) return items;
    if (!isItemGroup || kind !== ITEM)
      throw new InputError('a fragment of the pixel data does not begin as it should', `byte ${at}`, EXPORT_AGAIN);
    const from = at + ITEM_HEADER_BYTES;
    items.push({ offset: at - first, bytes: bytes.subarray(from, from + length) });
    at = from + length;
    if (items.length === 1) first = at;
  }
}

const cutShort = (at: number): InputError =>
  new InputError('the compressed pixel data is cut short', `byte ${at}`, EXPORT_AGAIN);

function offsetTable(bytes: Uint8Array): number[] {
  const view = viewOf(bytes);
  return Array.from({ length: Math.floor(bytes.length / 4) }, (_, i) => view.getUint32(4 * i, true));
}

/** The index of the first fragment of each frame: one fragment a frame, else by the offset table, else by content. */
function frameStarts(
  fragments: readonly Fragment[],
  table: readonly number[],
  frames: number,
  startsFrame: (bytes: Uint8Array) => boolean,
  warnings: string[],
): number[] {
  const byTable = table.map((offset) => fragments.findIndex((f) => f.offset === offset));
  const tableFits =
    byTable.length === frames && byTable.every((at, i) => at >= 0 && (i === 0 ? at === 0 : at > byTable[i - 1]!));
  if (tableFits) return byTable;
  if (table.length > 0) warnings.push('the table of frames in the pixel data is wrong and was not used');
  if (fragments.length === frames) return fragments.map((_, i) => i);
  const byContent = fragments.flatMap((f, i) => (startsFrame(f.bytes) ? [i] : []));
  if (byContent.length === frames && byContent[0] === 0) return byContent;
  throw notFrames(`${fragments.length} fragments`, frames);
}

const notFrames = (what: string, frames: number): InputError =>
  new InputError(
    `the pixel data holds ${what}, the header says ${frames} frames`,
    placeOf('NumberOfFrames'),
    EXPORT_AGAIN,
  );
