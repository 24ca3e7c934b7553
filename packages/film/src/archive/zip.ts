/** Files inside a ZIP: listed first, then unpacked one at a time, none to more than it says and the limits allow. */
import { InputError } from '@bonewright/fault';
import { unzipSync } from 'fflate';
import { isPart10 } from '../decode/dicom/elements.ts';
import { LARGEST_FILE_BYTES, LARGEST_UNPACKED_BYTES, MOST_ZIP_BYTES, MOST_ZIP_FILES } from '../decode/limits.ts';
import { crc32 } from './crc32.ts';
import { listedCrc } from './directory.ts';

export interface ZipEntry {
  /** Place in the ZIP's own list: two files may have one name. */
  readonly index: number;
  readonly name: string;
  readonly byteLength: number;
}

const SIGNATURES: readonly (readonly number[])[] = [
  [0x50, 0x4b, 0x03, 0x04],
  [0x50, 0x4b, 0x05, 0x06],
];
const MIB = 2 ** 20;

/** By its first bytes; a DICOM file may carry them in its preamble. */
export const isZip = (bytes: Uint8Array): boolean =>
  SIGNATURES.some((signature) => signature.every((byte, i) => bytes[i] === byte)) && !isPart10(bytes);

/**
 * What lies in a ZIP, folders left out; nothing is unpacked.
 * @throws InputError where it is damaged, or would unpack to more than the limits.
 */
export function zipEntries(bytes: Uint8Array, name: string): ZipEntry[] {
  if (bytes.length > LARGEST_FILE_BYTES)
    throw tooMuch(`${name} has ${mib(bytes.length)} MiB`, `at most ${mib(LARGEST_FILE_BYTES)} MiB`);
  const entries: ZipEntry[] = [];
  let seen = 0;
  let total = 0;
  readZip(bytes, name, (entry, byteLength) => {
    const index = seen++;
    total += byteLength;
    if (seen > MOST_ZIP_FILES) throw tooMuch(`${name} holds more than ${MOST_ZIP_FILES} files`, 'fewer');
    if (byteLength > LARGEST_UNPACKED_BYTES || total > MOST_ZIP_BYTES)
      throw tooMuch(
        `${name} would unpack to more than ${mib(byteLength > LARGEST_UNPACKED_BYTES ? LARGEST_UNPACKED_BYTES : MOST_ZIP_BYTES)} MiB`,
        'less',
      );
    if (!entry.endsWith('/')) entries.push({ index, name: entry, byteLength });
    return false;
  });
  return entries;
}

/**
 * One file of a ZIP that `zipEntries` listed.
 * @throws InputError where it cannot be unpacked, is not as long as the list says, or has another checksum.
 */
export function zipEntry(bytes: Uint8Array, { index, name, byteLength }: ZipEntry): Uint8Array {
  let seen = 0;
  const unpacked = readZip(bytes, name, () => seen++ === index)[name];
  if (unpacked?.length !== byteLength) throw damaged(name);
  if (crc32(unpacked) !== listedCrc(bytes, index)) {
    throw new InputError(
      `${name} is not what was packed: its checksum (CRC-32) differs`,
      '',
      'the archive was damaged on its way; fetch it anew, or choose the films themselves',
    );
  }
  return unpacked;
}

function readZip(bytes: Uint8Array, name: string, wants: (entry: string, byteLength: number) => boolean) {
  try {
    return unzipSync(bytes, { filter: (entry) => wants(entry.name, entry.originalSize) });
  } catch (error) {
    // Whatever else the unpacker throws, it is the archive that it could not read.
    throw error instanceof InputError ? error : damaged(name);
  }
}

const mib = (bytes: number): number => Math.round(bytes / MIB);
const damaged = (name: string) =>
  new InputError(`${name} could not be unpacked`, '', 'unpack it on a computer and choose the films themselves');
const tooMuch = (what: string, hint: string) =>
  new InputError(what, '', `unpack it on a computer and choose the films, or pack ${hint}`);
