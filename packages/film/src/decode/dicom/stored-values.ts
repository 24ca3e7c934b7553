/** Bytes of decoded pixels to stored values: byte order, sign, and only the bits that are stored. */
import type { Film } from '../../model/film.ts';
import type { ImageHeader } from './image-header.ts';

export interface StoredValues {
  readonly values: Film['pixels'];
  /** Bits above the stored ones held something other than zeros or the sign: an overlay of old, or damage. */
  readonly hasStrayBits: boolean;
}

/**
 * @param bytes samples interleaved; two-byte samples in the order `littleEndian` says.
 * @returns values masked to the stored bits and sign-extended where the header says they are signed.
 */
export function storedValues(bytes: Uint8Array, littleEndian: boolean, header: ImageHeader): StoredValues {
  const { bitsAllocated, bitsStored, signed } = header;
  if (bitsAllocated === 8) {
    const values = signed ? new Int8Array(bytes.length) : new Uint8Array(bytes.length);
    values.set(bytes);
    return { values, hasStrayBits: mask(values, bitsStored, signed) };
  }
  const values = signed ? new Int16Array(bytes.length / 2) : new Uint16Array(bytes.length / 2);
  const target = new Uint8Array(values.buffer);
  target.set(bytes);
  if (littleEndian !== HOST_IS_LITTLE_ENDIAN) swapPairs(target);
  return { values, hasStrayBits: mask(values, bitsStored, signed) };
}

const HOST_IS_LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

/** Swaps the bytes of each pair in place. */
export function swapPairs(bytes: Uint8Array): void {
  for (let i = 0; i + 1 < bytes.length; i += 2) {
    const first = bytes[i]!;
    bytes[i] = bytes[i + 1]!;
    bytes[i + 1] = first;
  }
}

/** Masks in place; true where that took away more than zeros or copies of the sign. */
function mask(values: Film['pixels'], bitsStored: number, signed: boolean): boolean {
  if (bitsStored === 8 * values.BYTES_PER_ELEMENT) return false;
  const stored = 2 ** bitsStored - 1;
  if (!signed && bitsOf(values) <= stored) return false;
  const shift = 32 - bitsStored;
  let hasStray = false;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    const kept = signed ? (value << shift) >> shift : value & stored;
    if (kept === value) continue;
    values[i] = kept;
    if (value !== (value & stored)) hasStray = true;
  }
  return hasStray;
}

/** Every bit that any value has set; two values at a time where they lie so. */
function bitsOf(values: Film['pixels']): number {
  const { buffer, byteOffset, byteLength, BYTES_PER_ELEMENT } = values;
  const pairs =
    BYTES_PER_ELEMENT === 2 && byteOffset % 4 === 0 ? new Uint32Array(buffer, byteOffset, byteLength >> 2) : null;
  let bits = 0;
  if (pairs) {
    for (let i = 0; i < pairs.length; i++) bits |= pairs[i]!;
    bits = (bits >>> 16) | (bits & 0xffff);
  }
  for (let i = pairs ? 2 * pairs.length : 0; i < values.length; i++) bits |= values[i]!;
  return bits;
}

/** Samples that lie plane by plane within each frame, laid pixel by pixel. */
export function interleaved(bytes: Uint8Array, header: ImageHeader): Uint8Array {
  const size = header.bitsAllocated / 8;
  const pixels = header.rows * header.cols;
  const out = new Uint8Array(bytes.length);
  for (let frame = 0; frame < bytes.length; frame += header.frameBytes) {
    let from = frame;
    for (let sample = 0; sample < header.samples; sample++) {
      for (let p = 0; p < pixels; p++) {
        const to = frame + (p * header.samples + sample) * size;
        for (let b = 0; b < size; b++) out[to + b] = bytes[from++]!;
      }
    }
  }
  return out;
}
