/** The first directory of a TIFF file (TIFF 6.0 section 2) as numbers, each checked to lie inside the file. */
import { InputError } from '@bonewright/fault';
import { viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';

export interface Directory {
  readonly littleEndian: boolean;
  /** All whole-number fields by tag. */
  readonly fields: ReadonlyMap<number, readonly number[]>;
  readonly hasMorePages: boolean;
}

const MAGIC = 42;
const ENTRY_BYTES = 12;
/** Bytes of one value by type: 1 BYTE, 3 SHORT, 4 LONG; the others are not needed. */
const SIZES: Record<number, 1 | 2 | 4> = { 1: 1, 3: 2, 4: 4 };
const MOST_NUMBERS = 1_000_000;

export function isTiff(bytes: Uint8Array): boolean {
  if (bytes.length < 8) return false;
  const order = viewOf(bytes).getUint16(0);
  return (order === 0x4949 || order === 0x4d4d) && viewOf(bytes).getUint16(2, order === 0x4949) === MAGIC;
}

/** @throws InputError with the byte that is wrong. */
export function readDirectory(bytes: Uint8Array): Directory {
  const view = viewOf(bytes);
  const littleEndian = view.getUint16(0) === 0x4949;
  const start = view.getUint32(4, littleEndian);
  if (start < 8 || start + 2 > bytes.length) throw outside('the directory of the TIFF', 4);
  const entries = view.getUint16(start, littleEndian);
  const end = start + 2 + ENTRY_BYTES * entries;
  if (end > bytes.length) throw outside('the directory of the TIFF', start);
  const fields = new Map<number, number[]>();
  let total = 0;
  for (let at = start + 2; at < end; at += ENTRY_BYTES) {
    const numbers = readNumbers(view, at, littleEndian);
    total += numbers.length;
    if (total > MOST_NUMBERS)
      throw new InputError('the directory of the TIFF holds too many numbers', `byte ${at}`, EXPORT_AGAIN);
    fields.set(view.getUint16(at, littleEndian), numbers);
  }
  const next = end + 4 <= bytes.length ? view.getUint32(end, littleEndian) : 0;
  return { littleEndian, fields, hasMorePages: next !== 0 };
}

function readNumbers(view: DataView, at: number, littleEndian: boolean): number[] {
  const size = SIZES[view.getUint16(at + 2, littleEndian)];
  const count = view.getUint32(at + 4, littleEndian);
  if (size === undefined || count > MOST_NUMBERS) return [];
  const from = size * count <= 4 ? at + 8 : view.getUint32(at + 8, littleEndian);
  if (from + size * count > view.byteLength) throw outside(`field ${view.getUint16(at, littleEndian)} of the TIFF`, at);
  const read = {
    1: (i: number) => view.getUint8(i),
    2: (i: number) => view.getUint16(i, littleEndian),
    4: (i: number) => view.getUint32(i, littleEndian),
  }[size];
  return Array.from({ length: count }, (_, i) => read(from + size * i));
}

const outside = (what: string, at: number): InputError =>
  new InputError(`${what} lies outside the file`, `byte ${at}`, EXPORT_AGAIN);
