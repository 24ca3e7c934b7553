/** From the pixel data element to stored values, whichever way they were coded. */
import { InputError } from '@bonewright/fault';
import type { Film } from '../../model/film.ts';
import { joined } from '../bytes.ts';
import { decodeFrame } from '../compressed/codecs.ts';
import { jpeg2000Codestream, readJpeg2000Header, startsJpeg2000 } from '../compressed/jpeg-2000-header.ts';
import { endsJpeg, readJpegHeader, startsJpeg } from '../compressed/jpeg-header.ts';
import { checkAgainst, type StreamHeader } from '../compressed/stream-header.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import { type Part10, pixelDataElement } from './elements.ts';
import type { ImageHeader } from './image-header.ts';
import { compressedFrames, nativePixels } from './pixel-frames.ts';
import { decodeRle } from './rle.ts';
import { interleaved, storedValues } from './stored-values.ts';
import { placeOf } from './tags.ts';
import type { PixelCoding } from './transfer-syntax.ts';

/** Decodes all frames. @throws InputError where the data is damaged or at odds with the header. */
export async function readPixels(file: Part10, header: ImageHeader, warnings: string[]): Promise<Film['pixels']> {
  const element = pixelDataElement(file);
  const { pixels: coding } = file.syntax;
  if (coding === 'native') {
    const raw = nativePixels(file, element, header, warnings);
    const { values, hasStrayBits } = storedValues(
      header.planar ? interleaved(raw, header) : raw,
      file.littleEndian,
      header,
    );
    if (hasStrayBits) warnings.push(STRAY);
    return values;
  }
  const frames = compressedFrames(file, element, header.frames, startOf(coding), warnings);
  const decoded: Uint8Array[] = [];
  for (const [i, frame] of frames.entries()) {
    const where = header.frames === 1 ? placeOf('PixelData') : `${placeOf('PixelData')} frame ${i + 1}`;
    decoded.push(
      coding === 'rle' ? decodeRle(frame, header, where) : await decodeStream(coding, frame, header, where, warnings),
    );
  }
  const { values, hasStrayBits } = storedValues(joined(decoded), true, header);
  if (hasStrayBits && !file.syntax.lossy)
    throw new InputError(`values go beyond the ${header.bitsStored} bits stored`, placeOf('PixelData'), EXPORT_AGAIN);
  if (hasStrayBits) warnings.push(STRAY);
  return values;
}

const STRAY = 'bits beyond those stored hold an old overlay or damage: they were left out';

const startOf = (coding: PixelCoding): ((bytes: Uint8Array) => boolean) => {
  if (coding === 'rle') return () => true;
  return coding === 'jpeg' || coding === 'jpeg-ls' ? startsJpeg : startsJpeg2000;
};

async function decodeStream(
  coding: Exclude<PixelCoding, 'native' | 'rle'>,
  frame: Uint8Array,
  header: ImageHeader,
  where: string,
  warnings: string[],
): Promise<Uint8Array> {
  const isJpeg = coding === 'jpeg' || coding === 'jpeg-ls';
  const stream = isJpeg ? frame : jpeg2000Codestream(frame, where);
  const own: StreamHeader = isJpeg ? readJpegHeader(stream, where) : readJpeg2000Header(stream, where);
  checkAgainst(own, header, where);
  if (!endsJpeg(stream)) warnings.push('the compressed picture lacks its end mark: look at its last rows');
  const { bytes, remarks } = await decodeFrame(coding, stream, header, where);
  for (const remark of remarks) warnings.push(`the decoder says: ${remark}`);
  return widened(bytes, header, own.precision, where);
}

/** Codecs give eight-bit streams back in single bytes, whatever the header allocates. */
function widened(bytes: Uint8Array, header: ImageHeader, precision: number, where: string): Uint8Array {
  if (bytes.length === header.frameBytes) return bytes;
  if (header.bitsAllocated === 16 && precision <= 8 && 2 * bytes.length === header.frameBytes) {
    const values = header.signed ? Int16Array.from(new Int8Array(bytes.buffer)) : Uint16Array.from(bytes);
    return new Uint8Array(values.buffer);
  }
  throw new InputError(
    `the compressed stream unpacks to ${bytes.length} bytes, the header needs ${header.frameBytes}`,
    where,
    EXPORT_AGAIN,
  );
}
