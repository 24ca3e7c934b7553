/** LZW as TIFF writes it (TIFF 6.0 section 13): most significant bit first, codes widen one early. */
import { InputError } from '@bonewright/fault';
import { EXPORT_AGAIN } from '../limits.ts';

const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const LEAST_WIDTH = 9;
const MOST_WIDTH = 12;
const TABLE = 2 ** MOST_WIDTH;

/** Unpacks exactly `length` bytes. @throws InputError at `where` for a damaged stream, a short one, and one that goes on. */
export function unpackLzw(packed: Uint8Array, length: number, where: string): Uint8Array {
  const out = new Uint8Array(length);
  const codes = new CodeReader(packed);
  const table = new Table();
  let previous = -1;
  let to = 0;
  while (to < length) {
    const code = codes.next(table.width);
    if (code === CLEAR) {
      table.clear();
      previous = -1;
      continue;
    }
    const isNew = code === table.next && previous >= 0;
    const known = isNew ? previous : code;
    if (!table.has(known) || to + table.sizeOf(known) + (isNew ? 1 : 0) > length) throw damaged(where);
    const first = table.write(known, out, to);
    to += table.sizeOf(known);
    if (isNew) out[to++] = first;
    if (previous >= 0) table.add(previous, first);
    previous = code;
  }
  const last = codes.next(table.width);
  if (last !== END && last !== CLEAR && last !== NONE) throw damaged(where);
  return out;
}

const damaged = (where: string): InputError =>
  new InputError('the packed data of the TIFF is damaged or cut short', where, EXPORT_AGAIN);

/** What is read where too few bits are left. */
const NONE = -1;

class CodeReader {
  readonly #packed: Uint8Array;
  #bits = 0;
  #held = 0;
  #from = 0;

  constructor(packed: Uint8Array) {
    this.#packed = packed;
  }

  next(width: number): number {
    while (this.#held < width) {
      const byte = this.#packed[this.#from++];
      if (byte === undefined) return NONE;
      this.#bits = ((this.#bits << 8) | byte) & 0xffffff;
      this.#held += 8;
    }
    this.#held -= width;
    return (this.#bits >> this.#held) & (2 ** width - 1);
  }
}

/** The strings known so far: each an earlier one and one more byte. */
class Table {
  next = FIRST_FREE;
  width = LEAST_WIDTH;
  readonly #prefix = new Uint16Array(TABLE);
  readonly #last = new Uint8Array(TABLE);
  readonly #size = new Uint16Array(TABLE).fill(1, 0, CLEAR);

  constructor() {
    for (let i = 0; i < CLEAR; i++) this.#last[i] = i;
  }

  clear(): void {
    this.next = FIRST_FREE;
    this.width = LEAST_WIDTH;
  }

  has(code: number): boolean {
    return code >= 0 && code < this.next && code !== CLEAR && code !== END;
  }

  sizeOf(code: number): number {
    return this.#size[code]!;
  }

  add(prefix: number, last: number): void {
    if (this.next === TABLE) return;
    this.#prefix[this.next] = prefix;
    this.#last[this.next] = last;
    this.#size[this.next] = this.#size[prefix]! + 1;
    this.next += 1;
    if (this.next + 1 >= 2 ** this.width && this.width < MOST_WIDTH) this.width += 1;
  }

  /** Writes the string from its last byte back to its first, which is returned. */
  write(code: number, out: Uint8Array, to: number): number {
    let walk = code;
    for (let at = to + this.sizeOf(code) - 1; at >= to; at--) {
      out[at] = this.#last[walk]!;
      walk = this.#prefix[walk]!;
    }
    return out[to]!;
  }
}
