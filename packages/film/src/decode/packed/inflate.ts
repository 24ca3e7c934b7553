/** Deflate and zlib streams unpacked piece by piece, stopped as soon as they yield more than was allowed. */
import { InputError } from '@bonewright/fault';
import { Inflate, Unzlib } from 'fflate';
import { joined, viewOf } from '../bytes.ts';
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
  const packed = joined(parts);
  const out: Uint8Array[] = [];
  let length = 0;
  const stream = new (kind === 'raw' ? Inflate : Unzlib)((piece) => {
    out.push(piece);
    length += piece.length;
  });
  try {
    for (const [piece, last] of pieces(packed)) {
      stream.push(piece, last);
      if (length > limit) throw tooMuch(limit, where);
    }
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError('its packed data is damaged or cut short', where, EXPORT_AGAIN);
  }
  const unpacked = joined(out);
  if (kind === 'zlib' && !endsWithChecksum(packed, adler32(unpacked)))
    throw new InputError('its packed data does not match its checksum', where, EXPORT_AGAIN);
  return unpacked;
}

/** RFC 1950, section 9. */
function adler32(bytes: Uint8Array): number {
  const base = 65521;
  /** Additions that fit 32 bits before the remainder must be taken. */
  const run = 3800;
  let a = 1;
  let b = 0;
  for (let at = 0; at < bytes.length; ) {
    const end = Math.min(bytes.length, at + run);
    for (; at < end; at++) {
      a += bytes[at]!;
      b += a;
    }
    a %= base;
    b %= base;
  }
  return ((b << 16) | a) >>> 0;
}

/** The checksum is the last four bytes, but for one of padding. */
function endsWithChecksum(packed: Uint8Array, checksum: number): boolean {
  const tail = packed.subarray(-5);
  if (tail.length < 4) return false;
  const view = viewOf(tail);
  const last = tail.length - 4;
  return view.getUint32(last) === checksum || (last > 0 && tail[4] === 0 && view.getUint32(0) === checksum);
}

function* pieces(packed: Uint8Array): Generator<[Uint8Array, boolean]> {
  for (let at = 0; at < packed.length; at += PIECE_BYTES) {
    yield [packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length];
  }
}

const tooMuch = (limit: number, where: string): InputError =>
  new InputError(`its packed data unpacks to more than ${limit} bytes`, where, EXPORT_AGAIN);
