/** A TIFF file without the fields that describe it: taken out of their directories, their values overwritten with zeros. */
import { InputError } from '@bonewright/fault';
import { viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';

/** Fields that say how the pixels lie and are to be read (TIFF 6.0 sections 8 and 9, 14 to 16, 18 to 22). */
const KEPT = new Set([
  254, 255, 256, 257, 258, 259, 262, 263, 264, 265, 266, 273, 274, 277, 278, 279, 280, 281, 282, 283, 284, 290, 291,
  292, 293, 296, 301, 317, 318, 319, 320, 321, 322, 323, 324, 325, 338, 339, 340, 341, 342, 347, 512, 513, 514, 529,
  530, 531, 532,
]);
/** EXIF, positions: directories of their own. */
const DIRECTORIES = new Set([330, 34665, 34853, 40965]);
const BYTES_OF_TYPE = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];
const ENTRY_BYTES = 12;
const MOST_DIRECTORIES = 64;

/** Throws InputError where a directory lies outside the file. */
export function anonymousTiff(bytes: Uint8Array): Uint8Array {
  const copy = bytes.slice();
  const view = viewOf(copy);
  const isLittle = view.getUint16(0) === 0x4949;
  let at = view.getUint32(4, isLittle);
  for (let page = 0; at !== 0 && page < MOST_DIRECTORIES; page++) at = keepInDirectory(copy, at, isLittle, KEPT);
  return copy;
}

/** Leaves these fields of the directory, gathered at its start; hands back where the next one lies. */
function keepInDirectory(bytes: Uint8Array, start: number, isLittle: boolean, kept: ReadonlySet<number>): number {
  const view = viewOf(bytes);
  if (start + 2 > bytes.length) throw outside(start);
  const count = view.getUint16(start, isLittle);
  const end = start + 2 + ENTRY_BYTES * count;
  if (end > bytes.length) throw outside(start);
  const next = end + 4 <= bytes.length ? view.getUint32(end, isLittle) : 0;
  const stay: Uint8Array[] = [];
  for (let at = start + 2; at < end; at += ENTRY_BYTES) {
    const tag = view.getUint16(at, isLittle);
    if (kept.has(tag)) {
      stay.push(bytes.slice(at, at + ENTRY_BYTES));
      continue;
    }
    if (DIRECTORIES.has(tag)) keepInDirectory(bytes, view.getUint32(at + 8, isLittle), isLittle, new Set());
    blank(bytes, at, isLittle);
  }
  bytes.fill(0, start, Math.min(bytes.length, end + 4));
  view.setUint16(start, stay.length, isLittle);
  for (const [i, entry] of stay.entries()) bytes.set(entry, start + 2 + ENTRY_BYTES * i);
  const after = start + 2 + ENTRY_BYTES * stay.length;
  if (after + 4 <= bytes.length) view.setUint32(after, next, isLittle);
  return next;
}

/** Zeros over the values of one field, where they lie outside its entry. */
function blank(bytes: Uint8Array, entry: number, isLittle: boolean): void {
  const view = viewOf(bytes);
  const size = (BYTES_OF_TYPE[view.getUint16(entry + 2, isLittle)] ?? 1) * view.getUint32(entry + 4, isLittle);
  if (size <= 4) return;
  const from = view.getUint32(entry + 8, isLittle);
  bytes.fill(0, from, from + size);
}

const outside = (at: number): InputError =>
  new InputError('a directory of the TIFF lies outside the file', `byte ${at}`, EXPORT_AGAIN);
