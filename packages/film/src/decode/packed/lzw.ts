/** LZW as TIFF writes it (TIFF 6.0 section 13): most significant bit first, codes widen one early. */
import { InputError } from '@bonewright/fault';
import { EXPORT_AGAIN } from '../limits.ts';

const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const LEAST_WIDTH = 9;
const MOST_WIDTH = 12;
const TABLE = 2 ** MOST_WIDTH;

/** Unpacks at most `length` bytes; fewer are an error. @throws InputError at `where` for a damaged or short stream. */
export function unpackLzw(packed: Uint8Array, length: number, where: string): Uint8Array {
  const out = new Uint8Array(length);
  const prefix = new Uint16Array(TABLE);
  const suffix = new Uint8Array(TABLE);
  const size = new Uint16Array(TABLE).fill(1, 0, CLEAR);
  for (let i = 0; i < CLEAR; i++) suffix[i] = i;
  let next = FIRST_FREE;
  let width = LEAST_WIDTH;
  let previous = -1;
  let bits = 0;
  let held = 0;
  let from = 0;
  let to = 0;
  while (to < length) {
    while (held < width && from < packed.length) {
      bits = ((bits << 8) | packed[from++]!) & 0xffffff;
      held += 8;
    }
    if (held < width) throw damaged(where);
    held -= width;
    const code = (bits >> held) & (2 ** width - 1);
    if (code === END) throw damaged(where);
    if (code === CLEAR) {
      next = FIRST_FREE;
      width = LEAST_WIDTH;
      previous = -1;
      continue;
    }
    if (code > next || (code === next && previous < 0)) throw damaged(where);
    const isNew = code === next;
    const known = isNew ? previous : code;
    const run = size[known]! + (isNew ? 1 : 0);
    let walk = known;
    for (let at = to + size[known]! - 1; at >= to; at--) {
      if (at < length) out[at] = suffix[walk]!;
      walk = prefix[walk]!;
    }
    const first = out[to]!;
    if (isNew && to + run - 1 < length) out[to + run - 1] = first;
    if (previous >= 0 && next < TABLE) {
      prefix[next] = previous;
      suffix[next] = first;
      size[next] = size[previous]! + 1;
      next += 1;
      if (next + 1 >= 2 ** width && width < MOST_WIDTH) width += 1;
    }
    to += run;
    previous = code;
  }
  return out;
}

const damaged = (where: string): InputError =>
  new InputError('the packed data of the TIFF is damaged or cut short', where, EXPORT_AGAIN);
