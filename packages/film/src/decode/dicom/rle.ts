/** RLE Lossless (PS3.5 annex G). */
import { InputError } from '@bonewright/fault';
import { viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import { unpackBits } from '../packed/pack-bits.ts';
import type { ImageHeader } from './image-header.ts';

const HEADER_BYTES = 64;
const MOST_SEGMENTS = 15;

/**
 * Unpacks one frame: a segment for each byte of each sample, most significant byte first.
 * @returns samples interleaved, little endian. @throws InputError where a segment is not exactly as long as it must be.
 */
export function decodeRle(frame: Uint8Array, header: ImageHeader, where: string): Uint8Array {
  const bytesPerSample = header.bitsAllocated / 8;
  const segments = readSegments(frame, header.samples * bytesPerSample, where);
  const pixels = header.rows * header.cols;
  const out = new Uint8Array(header.frameBytes);
  const stride = header.samples * bytesPerSample;
  for (const [i, segment] of segments.entries()) {
    const plane = unpackBits(segment, pixels, `${where}, segment ${i + 1}`);
    const sample = Math.floor(i / bytesPerSample);
    let at = sample * bytesPerSample + (bytesPerSample - 1 - (i % bytesPerSample));
    for (let p = 0; p < pixels; p++, at += stride) out[at] = plane[p]!;
  }
  return out;
}

function readSegments(frame: Uint8Array, wanted: number, where: string): Uint8Array[] {
  if (frame.length < HEADER_BYTES) throw new InputError('the packed data is cut short', where, EXPORT_AGAIN);
  const view = viewOf(frame);
  const count = view.getUint32(0, true);
  if (count !== wanted || count > MOST_SEGMENTS)
    throw new InputError(`the packed data has ${count} segments, its header needs ${wanted}`, where, EXPORT_AGAIN);
  const offsets = Array.from({ length: count }, (_, i) => view.getUint32(4 + 4 * i, true));
  offsets.push(frame.length);
  for (const [i, offset] of offsets.entries()) {
    if (offset > (offsets[i - 1] ?? HEADER_BYTES - 1) && offset <= frame.length) continue;
    throw new InputError('the table of segments points outside the packed data', where, EXPORT_AGAIN);
  }
  return offsets.slice(0, -1).map((from, i) => frame.subarray(from, offsets[i + 1]));
}
