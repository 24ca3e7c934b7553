/** What a TIFF directory says of its picture, refused by name where this reader could not give back the stored values. */
import { InputError } from '@bonewright/fault';
import { EXPORT_AGAIN } from '../limits.ts';
import { checkSize } from '../size-check.ts';
import type { Directory } from './directory.ts';

type Packing = 'none' | 'lzw' | 'deflate' | 'packbits';

/** Strips and tiles alike: blocks that cover the picture row by row, plane by plane. */
export interface Layout {
  readonly rows: number;
  readonly cols: number;
  readonly samples: number;
  readonly bits: 8 | 16;
  readonly isSigned: boolean;
  readonly lowIsWhite: boolean;
  readonly packing: Packing;
  readonly differenced: boolean;
  readonly littleEndian: boolean;
  readonly orientation: number;
  readonly blockRows: number;
  readonly blockCols: number;
  /** Samples of one block: all of them, or one where each sample has blocks of its own. */
  readonly blockSamples: number;
  /** Tiles are always whole, the last strip ends with the picture. */
  readonly isTiled: boolean;
  readonly blocks: readonly { readonly offset: number; readonly bytes: number }[];
}

const TAG = {
  width: 256,
  height: 257,
  bits: 258,
  compression: 259,
  photometric: 262,
  fillOrder: 266,
  stripOffsets: 273,
  orientation: 274,
  samples: 277,
  rowsPerStrip: 278,
  stripBytes: 279,
  planar: 284,
  predictor: 317,
  tileWidth: 322,
  tileHeight: 323,
  tileOffsets: 324,
  tileBytes: 325,
  sampleFormat: 339,
} as const;

const PACKINGS: Record<number, Packing> = { 1: 'none', 5: 'lzw', 8: 'deflate', 32773: 'packbits', 32946: 'deflate' };
const WHITE_IS_LOW = 0;
const BLACK_IS_LOW = 1;
const RGB = 2;

/** @throws InputError naming the field that is missing, malformed or not read here. */
export function readLayout({ fields, littleEndian }: Directory): Layout {
  const one = (tag: keyof typeof TAG, absent: number): number => fields.get(TAG[tag])?.[0] ?? absent;
  const size = { rows: one('height', 0), cols: one('width', 0), samples: one('samples', 1), frames: 1 };
  checkSize(size, 'ImageWidth (256)');
  const { bits, isSigned } = readSamples(fields);
  const photometric = one('photometric', -1);
  const fits = size.samples <= 2 ? photometric === WHITE_IS_LOW || photometric === BLACK_IS_LOW : photometric === RGB;
  if (!fits || size.samples < 1 || size.samples > 4)
    throw notRead(`pictures of kind ${photometric} with ${size.samples} samples`, 'PhotometricInterpretation (262)');
  const packing = PACKINGS[one('compression', 1)];
  if (!packing) throw notRead(`packing ${one('compression', 1)}`, 'Compression (259)');
  const predictor = one('predictor', 1);
  if (predictor !== 1 && predictor !== 2) throw notRead(`predictor ${predictor}`, 'Predictor (317)');
  if (one('fillOrder', 1) !== 1) throw notRead('reversed bit order', 'FillOrder (266)');
  const shape = {
    ...size,
    bits,
    isSigned,
    lowIsWhite: photometric === WHITE_IS_LOW,
    packing,
    differenced: predictor === 2,
    littleEndian,
    orientation: one('orientation', 1),
    blockSamples: one('planar', 1) === 2 ? 1 : size.samples,
  };
  return { ...shape, ...readBlocks(fields, shape) };
}

const notRead = (what: string, place: string): InputError =>
  new InputError(`the TIFF uses ${what}, which is not read`, place, 'save it as grey with 8 or 16 bits, unpacked');

function readSamples(fields: Directory['fields']): { bits: 8 | 16; isSigned: boolean } {
  const all = fields.get(TAG.bits) ?? [1];
  const [bits] = all;
  if ((bits !== 8 && bits !== 16) || all.some((b) => b !== bits))
    throw notRead(`${all.slice(0, 4).join(', ')} bits a sample`, 'BitsPerSample (258)');
  const format = fields.get(TAG.sampleFormat)?.[0] ?? 1;
  if (format !== 1 && format !== 2) throw notRead('floating point or complex numbers', 'SampleFormat (339)');
  return { bits, isSigned: format === 2 };
}

type Blocks = Pick<Layout, 'blockRows' | 'blockCols' | 'isTiled' | 'blocks'>;

function readBlocks(
  fields: Directory['fields'],
  {
    rows,
    cols,
    samples,
    blockSamples,
    packing,
    bits,
  }: Pick<Layout, 'rows' | 'cols' | 'samples' | 'blockSamples' | 'packing' | 'bits'>,
): Blocks {
  const isTiled = fields.has(TAG.tileOffsets);
  const blockCols = isTiled ? (fields.get(TAG.tileWidth)?.[0] ?? 0) : cols;
  const blockRows = isTiled
    ? (fields.get(TAG.tileHeight)?.[0] ?? 0)
    : Math.min(rows, fields.get(TAG.rowsPerStrip)?.[0] ?? rows);
  const place = isTiled ? 'TileOffsets (324)' : 'StripOffsets (273)';
  if (blockRows < 1 || blockCols < 1)
    throw new InputError('the TIFF is cut into pieces of no size', place, EXPORT_AGAIN);
  checkSize({ rows: blockRows, cols: blockCols, samples: blockSamples, frames: 1 }, place);
  const offsets = fields.get(isTiled ? TAG.tileOffsets : TAG.stripOffsets) ?? [];
  const planes = samples / blockSamples;
  const wanted = Math.ceil(rows / blockRows) * Math.ceil(cols / blockCols) * planes;
  const given = fields.get(isTiled ? TAG.tileBytes : TAG.stripBytes);
  const whole = packing === 'none' && wanted === 1 ? [(rows * cols * blockSamples * bits) / 8] : [];
  const lengths = given ?? whole;
  if (offsets.length !== wanted || lengths.length !== wanted)
    throw new InputError(`the TIFF names ${offsets.length} pieces, its size needs ${wanted}`, place, EXPORT_AGAIN);
  return { isTiled, blockRows, blockCols, blocks: offsets.map((offset, i) => ({ offset, bytes: lengths[i]! })) };
}
