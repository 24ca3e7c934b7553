/**
 * TIFF with 8 or 16 bits a sample, in strips or tiles, unpacked or by PackBits, LZW or deflate.
 * Written here because the stored values must come back as they are: the library tried turns min-is-white round,
 * changes colours that have an alpha, reads planes and coloured tiles wrong without a word, and unpacks without bound.
 */
import { InputError } from '@bonewright/fault';
import type { Film } from '../../model/film.ts';
import { viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import { inflateBounded } from '../packed/inflate.ts';
import { unpackLzw } from '../packed/lzw.ts';
import { unpackBits } from '../packed/pack-bits.ts';
import { pictureFilm } from '../picture-film.ts';
import { readDirectory } from './directory.ts';
import { type Layout, readLayout } from './layout.ts';

export { isTiff } from './directory.ts';

/** @throws InputError naming the field or piece at fault. */
export function decodeTiff(bytes: Uint8Array): Omit<Film, 'min' | 'max'> {
  const directory = readDirectory(bytes);
  const layout = readLayout(directory);
  const size = layout.rows * layout.cols * layout.samples;
  const stored = layout.bits === 8 ? new Uint8Array(size) : new Uint16Array(size);
  const across = Math.ceil(layout.cols / layout.blockCols);
  const perPlane = across * Math.ceil(layout.rows / layout.blockRows);
  for (const [i, block] of layout.blocks.entries()) {
    const where = `piece ${i + 1} of ${layout.blocks.length}`;
    const inPlane = i % perPlane;
    const top = Math.floor(inPlane / across) * layout.blockRows;
    const blockRows = layout.isTiled ? layout.blockRows : Math.min(layout.blockRows, layout.rows - top);
    const values = blockValues(packedBytes(bytes, block, where), layout, blockRows, where);
    place(values, stored, layout, {
      top,
      left: (inPlane % across) * layout.blockCols,
      sample: Math.floor(i / perPlane),
    });
  }
  const pixels = layout.isSigned ? asSigned(stored) : stored;
  return pictureFilm({ format: 'tiff', ...layout, pixels }, {}, [
    ...(directory.hasMorePages ? ['the TIFF holds more pages: the first is shown'] : []),
    ...(layout.orientation === 1 ? [] : ['the TIFF says it is turned or mirrored: it is read as stored']),
  ]);
}

const asSigned = (stored: Uint8Array | Uint16Array): Int8Array | Int16Array =>
  stored instanceof Uint8Array ? new Int8Array(stored.buffer) : new Int16Array(stored.buffer);

function packedBytes(
  bytes: Uint8Array,
  { offset, bytes: length }: Layout['blocks'][number],
  where: string,
): Uint8Array {
  if (offset + length <= bytes.length) return bytes.subarray(offset, offset + length);
  throw new InputError(`the picture lies outside the file, which has ${bytes.length} bytes`, where, EXPORT_AGAIN);
}

/** The values of one block, `blockRows` rows of them, differences summed up. */
function blockValues(packed: Uint8Array, layout: Layout, blockRows: number, where: string): Uint8Array | Uint16Array {
  const perRow = layout.blockCols * layout.blockSamples;
  const needed = (blockRows * perRow * layout.bits) / 8;
  const raw = unpacked(packed, layout, needed, where);
  const wholeBlock = (layout.blockRows * perRow * layout.bits) / 8;
  const spare = raw.length - needed;
  if (spare < 0 || (spare >= (perRow * layout.bits) / 8 && raw.length !== wholeBlock))
    throw new InputError(`the picture has ${raw.length} bytes, its size needs ${needed}`, where, EXPORT_AGAIN);
  const values = layout.bits === 8 ? raw.slice(0, needed) : words(raw, blockRows * perRow, layout.littleEndian);
  if (layout.differenced)
    for (let row = 0; row < blockRows; row++) {
      const end = (row + 1) * perRow;
      for (let i = row * perRow + layout.blockSamples; i < end; i++) values[i]! += values[i - layout.blockSamples]!;
    }
  return values;
}

function unpacked(packed: Uint8Array, layout: Layout, needed: number, where: string): Uint8Array {
  if (layout.packing === 'lzw') return unpackLzw(packed, needed, where);
  if (layout.packing === 'packbits') return unpackBits(packed, needed, where);
  if (layout.packing === 'none') return packed;
  const wholeBlock = (layout.blockRows * layout.blockCols * layout.blockSamples * layout.bits) / 8;
  return inflateBounded([packed], 'zlib', wholeBlock, where);
}

function words(raw: Uint8Array, count: number, littleEndian: boolean): Uint16Array {
  const view = viewOf(raw);
  const values = new Uint16Array(count);
  for (let i = 0; i < count; i++) values[i] = view.getUint16(2 * i, littleEndian);
  return values;
}

interface Place {
  readonly top: number;
  readonly left: number;
  /** The first sample of the block's values. */
  readonly sample: number;
}

/** Copies a block to where it belongs; what a tile has beyond the picture is left out. */
function place(
  values: Uint8Array | Uint16Array,
  stored: Uint8Array | Uint16Array,
  { rows, cols, samples, blockRows, blockCols, blockSamples }: Layout,
  { top, left, sample }: Place,
): void {
  const seenRows = Math.min(blockRows, rows - top);
  const seenCols = Math.min(blockCols, cols - left);
  for (let row = 0; row < seenRows; row++) {
    const from = row * blockCols * blockSamples;
    const to = ((top + row) * cols + left) * samples + sample;
    if (blockSamples === samples) {
      stored.set(values.subarray(from, from + seenCols * samples), to);
      continue;
    }
    for (let col = 0; col < seenCols; col++) stored[to + col * samples] = values[from + col]!;
  }
}
