/** A copy of a film's file for somebody else: the same pixels, and nothing that names patient, owner, people, places or times. */
import { InputError } from '@bonewright/fault';
import { joined, latin1, viewOf } from './bytes.ts';
import { startsJpeg } from './compressed/jpeg-header.ts';
import { anonymousDicom } from './dicom/anonymous.ts';
import { isPart10 } from './dicom/elements.ts';
import { isPng } from './png.ts';
import { anonymousTiff } from './tiff/anonymous.ts';
import { isTiff } from './tiff/directory.ts';

/**
 * The file without its personal data, in its own format; what is burnt into the picture itself stays.
 * DICOM: Basic Application Level Confidentiality Profile of PS3.15 annex E, by a list of what is kept.
 * PNG, JPEG, TIFF: without texts, EXIF and what else describes the picture. Throws InputError where it is no film.
 */
export function withoutNames(bytes: Uint8Array): Uint8Array {
  // A Buffer of Node's hands out views where an array hands out copies.
  const plain = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (isPart10(plain)) return anonymousDicom(plain);
  if (isPng(plain)) return joined(pngParts(plain));
  if (isTiff(plain)) return anonymousTiff(plain);
  if (startsJpeg(plain)) return joined(jpegParts(plain));
  throw new InputError('this is no DICOM, PNG, TIFF or JPEG file', 'byte 0', 'give a film');
}

/** Chunks that say how the pixels are to be read (PNG third edition, section 11); all others describe. */
const PNG_KEPT = new Set(['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'gAMA', 'cHRM', 'sRGB', 'sBIT', 'pHYs']);
const PNG_SIGNATURE_BYTES = 8;
/** Length, name and checksum. */
const PNG_FRAME_BYTES = 12;

function pngParts(bytes: Uint8Array): Uint8Array[] {
  const view = viewOf(bytes);
  const parts = [bytes.subarray(0, PNG_SIGNATURE_BYTES)];
  for (let at = PNG_SIGNATURE_BYTES; at + PNG_FRAME_BYTES <= bytes.length; ) {
    const end = at + PNG_FRAME_BYTES + view.getUint32(at);
    const name = latin1(bytes.subarray(at + 4, at + 8));
    if (PNG_KEPT.has(name)) parts.push(bytes.subarray(at, end));
    if (name === 'IEND') break;
    at = end;
  }
  return parts;
}

const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
/** APP0 is the picture's own (JFIF), APP14 says how its colours are stored; the others hold what cameras and people wrote. */
const isDescription = (marker: number): boolean =>
  marker === COMMENT || (marker > 0xe0 && marker <= 0xef && marker !== 0xee);

function jpegParts(bytes: Uint8Array): Uint8Array[] {
  const view = viewOf(bytes);
  const parts = [bytes.subarray(0, 2)];
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff && bytes[at + 1] !== START_OF_SCAN) {
    const end = at + 2 + view.getUint16(at + 2);
    if (!isDescription(view.getUint8(at + 1))) parts.push(bytes.subarray(at, end));
    at = end;
  }
  return [...parts, bytes.subarray(at)];
}
