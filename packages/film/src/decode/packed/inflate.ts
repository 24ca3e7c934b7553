/** Deflate and zlib streams unpacked piece by piece, stopped as soon as they yield more than was allowed. */
import { InputError } from '@bonewright/fault';
import { Inflate, Unzlib } from 'fflate';
import { joined } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';

/** Packed bytes handed over at a time: a bomb is noticed after one piece, at most 1032 times this. */
const PIECE_BYTES = 64 * 1024;

/**
 * Unpacks one stream, given in parts, into at most `limit` bytes.
 * @throws InputError at `where` for damage, a stream cut short, and output past the limit.
 */
export function inflateBounded(
  parts: readonly Uint8Array[],
  kind: 'raw' | 'zlib',
  limit: number,
  where: string,
): Uint8Array {
  const out: Uint8Array[] = [];
  let length = 0;
  const stream = new (kind === 'raw' ? Inflate : Unzlib)((piece) => {
    out.push(piece);
    length += piece.length;
  });
  try {
    for (const [piece, last] of pieces(joined(parts))) {
      stream.push(piece, last);
      if (length > limit) throw tooMuch(limit, where);
    }
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError('its packed data is damaged or cut short', where, EXPORT_AGAIN);
  }
  return joined(out);
}

function* pieces(packed: Uint8Array): Generator<[Uint8Array, boolean]> {
  for (let at = 0; at < packed.length; at += PIECE_BYTES) {
    yield [packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length];
  }
}

const tooMuch = (limit: number, where: string): InputError =>
  new InputError(`its packed data unpacks to more than ${limit} bytes`, where, EXPORT_AGAIN);
