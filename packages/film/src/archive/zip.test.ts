import { InputError } from '@bonewright/fault';
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { crc32 } from './crc32.ts';
import { isZip, zipEntries, zipEntry } from './zip.ts';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const packed = zipSync({
  'cd/a.dcm': text('first film, first film, first film'),
  'cd/b.dcm': text('second'),
  'cd/empty/': new Uint8Array(),
});

test('files come out as they went in, folders are none', () => {
  expect(isZip(packed)).toBe(true);
  const entries = zipEntries(packed, 'cd.zip');
  expect(entries.map(({ name }) => name)).toEqual(['cd/a.dcm', 'cd/b.dcm']);
  expect(zipEntry(packed, entries[0]!)).toEqual(text('first film, first film, first film'));
  expect(zipEntry(packed, entries[1]!)).toEqual(text('second'));
});

test('a DICOM file whose preamble begins like a ZIP is no ZIP', () => {
  const film = new Uint8Array(200);
  film.set([0x50, 0x4b, 0x03, 0x04]);
  film.set(text('DICM'), 128);
  expect(isZip(film)).toBe(false);
});

/** The same archive, its list claiming another unpacked size for its first file. */
function claiming(size: number): Uint8Array {
  const bytes = Uint8Array.from(packed);
  const view = new DataView(bytes.buffer);
  const list = bytes.findIndex((_, i) => view.byteLength - i > 4 && view.getUint32(i, true) === 0x02014b50);
  view.setUint32(list + 24, size, true);
  return bytes;
}

test('a bomb is refused by what its list says, before anything is unpacked', () => {
  expect(() => zipEntries(claiming(0xfffffff0), 'bomb.zip')).toThrow(/more than 200 MiB/);
  const many = zipSync(Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`${i}.dcm`, new Uint8Array()])));
  expect(() => zipEntries(many, 'many.zip')).toThrow(/more than 2000 files/);
});

test('a file longer than its list says is not passed as whole', () => {
  const lying = claiming(100);
  expect(() => zipEntry(lying, zipEntries(lying, 'x.zip')[0]!)).toThrow(InputError);
});

test('a cut archive is refused in words', () => {
  expect(() => zipEntries(packed.subarray(0, packed.length - 10), 'cut.zip')).toThrow(/cut.zip could not be unpacked/);
});

test('CRC-32 of the digits 1 to 9 is CBF43926, the check value of the catalogue of CRC algorithms', () => {
  expect(crc32(text('123456789'))).toBe(0xcbf43926);
});

test('a byte changed inside the archive is seen by the checksum and refused in words', () => {
  const bytes = Uint8Array.from(zipSync({ 'a.dcm': text('one film'), 'b.dcm': text('another') }, { level: 0 }));
  const at = bytes.findIndex((_, i) => text('another').every((c, k) => bytes[i + k] === c));
  bytes[at] = 'A'.charCodeAt(0);
  const [a, b] = zipEntries(bytes, 'x.zip');
  expect(zipEntry(bytes, a!)).toEqual(text('one film'));
  expect(() => zipEntry(bytes, b!)).toThrow(/b.dcm is not what was packed: its checksum/);
});
