/** PackBits runs (TIFF 6.0 section 9), which DICOM's RLE (PS3.5 annex G) is made of too. */
import { InputError } from '@bonewright/fault';
import { EXPORT_AGAIN } from '../limits.ts';

/**
 * Unpacks PackBits runs into exactly `length` bytes.
 * @throws InputError where the runs end early, run over, or leave more behind than padding.
 */
export function unpackBits(packed: Uint8Array, length: number, where: string): Uint8Array {
  const out = new Uint8Array(length);
  let from = 0;
  let to = 0;
  while (to < length) {
    const count = packed[from++];
    if (count === undefined) throw new InputError('the packed data is cut short', where, EXPORT_AGAIN);
    if (count === 128) continue;
    const isCopy = count < 128;
    const run = isCopy ? count + 1 : 257 - count;
    const takes = isCopy ? run : 1;
    if (to + run > length || from + takes > packed.length)
      throw new InputError('the packed data is damaged: a run goes past its end', where, EXPORT_AGAIN);
    if (isCopy) out.set(packed.subarray(from, from + run), to);
    else out.fill(packed[from]!, to, to + run);
    from += takes;
    to += run;
  }
  if (packed.subarray(from).some((b) => b !== 0 && b !== 128))
    throw new InputError('the packed data is damaged: more follows than the picture holds', where, EXPORT_AGAIN);
  return out;
}
