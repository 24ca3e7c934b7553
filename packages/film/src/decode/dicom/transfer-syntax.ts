/** The ways a DICOM file may be written (PS3.5 section 10 and annex A), and what each asks of the reader. */
import { InputError } from '@bonewright/fault';
import { printable } from '../bytes.ts';
import { placeOf } from './tags.ts';

export type PixelCoding = 'native' | 'rle' | 'jpeg' | 'jpeg-ls' | 'jpeg-2000' | 'htj2k';

export interface TransferSyntax {
  readonly uid: string;
  readonly name: string;
  readonly explicitVr: boolean;
  readonly littleEndian: boolean;
  readonly deflated: boolean;
  readonly pixels: PixelCoding;
  /** Some detail may have been thrown away before the film came here. */
  readonly lossy: boolean;
}

const BASE = '1.2.840.10008.1.2';

const compressed = (tail: string, name: string, pixels: PixelCoding, lossy = false): TransferSyntax => ({
  ...{ uid: `${BASE}.${tail}`, name, explicitVr: true, littleEndian: true, deflated: false, pixels, lossy },
});

const EXPLICIT = compressed('1', 'Explicit VR Little Endian', 'native');

const SYNTAXES: readonly TransferSyntax[] = [
  { ...EXPLICIT, uid: BASE, name: 'Implicit VR Little Endian', explicitVr: false },
  EXPLICIT,
  { ...EXPLICIT, uid: `${BASE}.1.99`, name: 'Deflated Explicit VR Little Endian', deflated: true },
  { ...EXPLICIT, uid: `${BASE}.2`, name: 'Explicit VR Big Endian', littleEndian: false },
  compressed('5', 'RLE Lossless', 'rle'),
  compressed('4.50', 'JPEG Baseline', 'jpeg', true),
  compressed('4.51', 'JPEG Extended', 'jpeg', true),
  compressed('4.57', 'JPEG Lossless', 'jpeg'),
  compressed('4.70', 'JPEG Lossless, first-order prediction', 'jpeg'),
  compressed('4.80', 'JPEG-LS Lossless', 'jpeg-ls'),
  compressed('4.81', 'JPEG-LS Near-lossless', 'jpeg-ls', true),
  compressed('4.90', 'JPEG 2000 Lossless', 'jpeg-2000'),
  compressed('4.91', 'JPEG 2000', 'jpeg-2000', true),
  compressed('4.201', 'High-Throughput JPEG 2000 Lossless', 'htj2k'),
  compressed('4.202', 'High-Throughput JPEG 2000 Lossless, RPCL', 'htj2k'),
  compressed('4.203', 'High-Throughput JPEG 2000', 'htj2k', true),
];

/** @throws InputError naming the UID where no way to read it is known. */
export function transferSyntax(uid: string): TransferSyntax {
  const found = SYNTAXES.find((s) => s.uid === uid);
  if (found) return found;
  throw new InputError(
    uid ? `transfer syntax "${printable(uid)}" cannot be read` : 'the transfer syntax is missing',
    placeOf('TransferSyntaxUID'),
    'export the film as DICOM, Explicit VR Little Endian',
  );
}
