/**
 * PNG with 8 or 16 bits a sample, or a palette. Chunks are walked and the packed data measured before fast-png decodes:
 * on its own it unpacks without bound. It is given the four chunks that make the picture, nothing else.
 */
import { InputError } from '@bonewright/fault';
import { convertIndexedToRgb, decode } from 'fast-png';
import type { Film } from '../model/film.ts';
import { joined, latin1, viewOf } from './bytes.ts';
import { EXPORT_AGAIN } from './limits.ts';
import { inflateBounded } from './packed/inflate.ts';
import { type Picture, pictureFilm } from './picture-film.ts';
import { checkSize } from './size-check.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const CHUNK_FRAME_BYTES = 12;
const HEADER_BYTES = 13;
const SAMPLES: Record<number, number> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
const PALETTE = 3;

export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((b, i) => bytes[i] === b);

/** @throws InputError naming the byte or chunk at fault. */
export function decodePng(bytes: Uint8Array): Omit<Film, 'min' | 'max'> {
  const chunks = readChunks(bytes);
  const head = readHead(chunks[0]);
  checkData(chunks, head);
  const kept = chunks.filter(({ type }) => ['IHDR', 'PLTE', 'IDAT', 'IEND'].includes(type)).map((c) => c.whole);
  const png = decodeKept(joined([Uint8Array.from(SIGNATURE), ...kept]));
  if (head.colour !== PALETTE && png.depth !== 8 && png.depth !== 16)
    throw new InputError(`the PNG has ${png.depth} bits a sample`, 'IHDR', 'save it with 8 or 16 bits');
  const picture: Picture = {
    format: 'png',
    rows: head.rows,
    cols: head.cols,
    samples: png.palette ? (png.palette[0]?.length ?? 3) : head.samples,
    pixels: png.palette ? Uint8Array.from(convertIndexedToRgb(png)) : plain(png.data),
  };
  return pictureFilm(picture, resolution(chunks), transparencyWarning(chunks));
}

type Png = ReturnType<typeof decode>;

const plain = (data: Png['data']): Uint8Array | Uint16Array =>
  data instanceof Uint8ClampedArray ? Uint8Array.from(data) : data;

interface Chunk {
  readonly type: string;
  readonly at: number;
  readonly data: Uint8Array;
  readonly whole: Uint8Array;
}

function readChunks(bytes: Uint8Array): Chunk[] {
  const view = viewOf(bytes);
  const chunks: Chunk[] = [];
  for (let at = SIGNATURE.length; at + CHUNK_FRAME_BYTES <= bytes.length; ) {
    const length = view.getUint32(at);
    const end = at + CHUNK_FRAME_BYTES + length;
    if (end > bytes.length) break;
    const type = latin1(bytes.subarray(at + 4, at + 8));
    chunks.push({ type, at, data: bytes.subarray(at + 8, end - 4), whole: bytes.subarray(at, end) });
    if (type === 'IEND') return chunks;
    at = end;
  }
  throw new InputError('the PNG ends before its last chunk', `byte ${bytes.length}`, EXPORT_AGAIN);
}

interface Head {
  readonly rows: number;
  readonly cols: number;
  readonly samples: number;
  readonly depth: number;
  readonly colour: number;
  readonly isInterlaced: boolean;
}

function readHead(chunk: Chunk | undefined): Head {
  if (chunk?.type !== 'IHDR' || chunk.data.length !== HEADER_BYTES)
    throw new InputError('the PNG does not begin with its header', `byte ${SIGNATURE.length}`, EXPORT_AGAIN);
  const view = viewOf(chunk.data);
  const head = {
    cols: view.getUint32(0),
    rows: view.getUint32(4),
    depth: view.getUint8(8),
    colour: view.getUint8(9),
    isInterlaced: view.getUint8(12) === 1,
  };
  const samples = SAMPLES[head.colour];
  if (samples === undefined)
    throw new InputError(`the PNG has the unknown colour type ${head.colour}`, 'IHDR', EXPORT_AGAIN);
  checkSize({ ...head, samples, frames: 1 }, 'IHDR');
  return { ...head, samples };
}

/** The packed data must unpack to exactly the bytes the header implies: short data would leave rows black, long data is a bomb. */
function checkData(chunks: readonly Chunk[], head: Head): void {
  const data = chunks.filter(({ type }) => type === 'IDAT').map((c) => c.data);
  const place = 'IDAT';
  if (data.length === 0) throw new InputError('the PNG holds no picture', place, EXPORT_AGAIN);
  const needed = head.isInterlaced ? interlacedBytes(head) : passBytes(head, head.cols, head.rows);
  const there = inflateBounded(data, 'zlib', needed, place).length;
  if (there !== needed)
    throw new InputError(`the packed data unpacks to ${there} bytes, its header needs ${needed}`, place, EXPORT_AGAIN);
}

const passBytes = ({ samples, depth }: Head, cols: number, rows: number): number =>
  cols === 0 || rows === 0 ? 0 : rows * (1 + Math.ceil((cols * samples * depth) / 8));

/** Adam7: first column, first row, column step, row step of the seven passes. */
const ADAM7 = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

const interlacedBytes = (head: Head): number =>
  ADAM7.reduce((sum, [col, row, colStep, rowStep]) => {
    const cols = Math.ceil(Math.max(0, head.cols - col) / colStep);
    const rows = Math.ceil(Math.max(0, head.rows - row) / rowStep);
    return sum + passBytes(head, cols, rows);
  }, 0);

function decodeKept(png: Uint8Array): Png {
  try {
    return decode(png, { checkCrc: true });
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    throw new InputError(`the PNG is damaged (${detail})`, '', EXPORT_AGAIN);
  }
}

/** Dots per inch as the file claims them; they say nothing of the bone. */
function resolution(chunks: readonly Chunk[]): Record<string, string> {
  const data = chunks.find(({ type }) => type === 'pHYs')?.data;
  if (data?.length !== 9 || data[8] !== 1) return {};
  const view = viewOf(data);
  return { pixelsPerMetre: `${view.getUint32(0)} x ${view.getUint32(4)}` };
}

const transparencyWarning = (chunks: readonly Chunk[]): string[] =>
  chunks.some(({ type }) => type === 'tRNS') ? ['the PNG marks a value as transparent: it is shown as it is'] : [];
