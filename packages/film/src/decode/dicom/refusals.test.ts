/** Damaged and hostile DICOM files: refused in words that name the place, never decoded into something else. */
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import { joined } from '../bytes.ts';
import { decodeFilm } from '../decode-film.ts';
import { element, encapsulated, part10, WHOLE, words } from './written-for-tests.ts';

const SYNTAX = '1.2.840.10008.1.2';
const reference = (file: string): Uint8Array =>
  Uint8Array.from(readFileSync(new URL(`../../../cases/dicom/${file}`, import.meta.url)));
const ascii = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

/** What, where and hint of the refusal; fails on a film and on any other error. */
async function refusal(bytes: Uint8Array): Promise<string> {
  try {
    const film = await decodeFilm(bytes, 'film.dcm');
    return `decoded ${film.cols} x ${film.rows}`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return `${error.what} @ ${error.path}`;
  }
}

/** A copy with `found` (its only or last occurrence) overwritten by `put`. */
function patched(bytes: Uint8Array, found: number[], put: number[]): Uint8Array {
  const at = Buffer.from(bytes).lastIndexOf(Buffer.from(found));
  expect(at).toBeGreaterThan(0);
  const copy = bytes.slice();
  copy.set(put, at);
  return copy;
}

const header = part10({ PixelData: undefined });

test('the film these tests damage is whole', async () => {
  const film = await decodeFilm(part10(), 'film.dcm');
  expect([...film.pixels]).toEqual([0, 1, 2, 3, 4, 4095]);
  expect(film.warnings).toEqual([]);
});

test.each([
  [{ Rows: undefined }, 'Rows is missing @ Rows (0028,0010)'],
  [{ Rows: 0 }, 'the picture is 3 x 0 pixels @ Rows (0028,0010)'],
  [{ Rows: words(2, 0) }, 'Rows is not one whole number of two bytes @ Rows (0028,0010)'],
  [{ Columns: '3' }, 'Columns is not one whole number of two bytes @ Columns (0028,0011)'],
  [
    { Rows: 50000, Columns: 50000 },
    'the header claims 50000 x 50000 pixels, 1 samples each, 1 frames: 2500000000 values @ Rows (0028,0010)',
  ],
  [
    { NumberOfFrames: '1A' },
    'NumberOfFrames holds "1A", not a whole number of at least 1 @ NumberOfFrames (0028,0008)',
  ],
  [{ NumberOfFrames: '0' }, 'NumberOfFrames holds "0", not a whole number of at least 1 @ NumberOfFrames (0028,0008)'],
  [{ BitsAllocated: 32 }, 'BitsAllocated is 32 @ BitsAllocated (0028,0100)'],
  [{ BitsStored: 17 }, 'BitsStored is 17 of 16 allocated @ BitsStored (0028,0101)'],
  [{ HighBit: 15 }, 'HighBit is 15, not BitsStored 12 less 1 @ HighBit (0028,0102)'],
  [{ PixelRepresentation: 2 }, 'PixelRepresentation is 2, not 0 or 1 @ PixelRepresentation (0028,0103)'],
  [
    { SamplesPerPixel: 3 },
    'MONOCHROME2 needs SamplesPerPixel 1, the header says 3 @ PhotometricInterpretation (0028,0004)',
  ],
  [
    { PhotometricInterpretation: 'MONOCHROM2' },
    'the photometric interpretation "MONOCHROM2" cannot be read @ PhotometricInterpretation (0028,0004)',
  ],
  [
    { PhotometricInterpretation: 'constructor' },
    'the photometric interpretation "constructor" cannot be read @ PhotometricInterpretation (0028,0004)',
  ],
  [{ PixelData: undefined }, 'the file holds no picture @ PixelData (7FE0,0010)'],
  [{ PixelData: words(0, 1, 2, 3, 4) }, 'the pixel data ends after 10 of 12 bytes @ PixelData (7FE0,0010)'],
  [{ Rows: 1 }, 'the pixel data holds 12 bytes, its header describes 6 @ PixelData (7FE0,0010)'],
  [{ NumberOfFrames: '2' }, 'the pixel data ends after 12 of 24 bytes @ PixelData (7FE0,0010)'],
])('header %j: %s', async (changes, said) => {
  expect(await refusal(part10(changes))).toBe(said);
});

test.each([
  [
    'a syntax nobody reads',
    part10({}, '1.2.3'),
    'transfer syntax "1.2.3" cannot be read @ TransferSyntaxUID (0002,0010)',
  ],
  [
    'no syntax',
    joined([new Uint8Array(128), ascii('DICM'), element('Rows', 2)]),
    'the transfer syntax is missing @ TransferSyntaxUID (0002,0010)',
  ],
  ['a header alone', part10().subarray(0, 160), 'the file ends after its header @ byte 160'],
  [
    'an element twice',
    joined([header, element('Rows', 2), element('PixelData', WHOLE.PixelData)]),
    `element (0028,0010) appears twice @ byte ${header.length}`,
  ],
  [
    'a value past the end',
    joined([header, element('WindowCenter', '40'), ascii('\x28\0\x51\x10LO\xff\xff')]),
    `an element runs past the end of the file @ byte ${header.length + 10 + 8}`,
  ],
  [
    'a kind of value nobody knows',
    joined([header, element('Modality', 'DX', 'XX')]),
    `the kind of value "XX" is unknown @ byte ${header.length + 4}`,
  ],
  [
    'native pixels under a compressed syntax',
    part10({}, `${SYNTAX}.4.70`),
    'the pixels are not in the compressed form the transfer syntax says @ PixelData (7FE0,0010)',
  ],
  [
    'compressed pixels under a native syntax',
    joined([header, encapsulated([words(1)])]),
    'the pixels are in compressed form, the transfer syntax says they are not @ PixelData (7FE0,0010)',
  ],
  [
    'no fragment',
    joined([part10({ PixelData: undefined }, `${SYNTAX}.5`), encapsulated([])]),
    'the pixel data is empty @ PixelData (7FE0,0010)',
  ],
  [
    'no picture in the stream',
    joined([part10({ PixelData: undefined }, `${SYNTAX}.4.90`), encapsulated([words(1, 2, 3, 4)])]),
    'the pixel data does not begin as a JPEG 2000 stream @ PixelData (7FE0,0010), byte 0 of the compressed stream',
  ],
])('%s', async (_, bytes, said) => {
  expect(await refusal(bytes)).toBe(said);
});

test('values beyond the stored bits: masked and told in plain pixels, where an old overlay may lie, refused in packed ones', async () => {
  const film = await decodeFilm(part10({ PixelData: words(0xf001, 1, 2, 3, 4, 5) }), 'film.dcm');
  expect([...film.pixels]).toEqual([1, 1, 2, 3, 4, 5]);
  expect(film.warnings).toEqual(['bits beyond those stored hold an old overlay or damage: they were left out']);
  const packed = withFragment('u12-rle.dcm', (f) => {
    f[65] = 0xff;
    return f;
  });
  expect(await refusal(packed)).toBe('values go beyond the 12 bits stored @ PixelData (7FE0,0010)');
});

test('every cut of a whole film is refused', async () => {
  const whole = part10();
  for (let length = 0; length < whole.length; length++)
    expect(await refusal(whole.subarray(0, length)), `cut to ${length} bytes`).not.toMatch(/^decoded/);
});

test.each(['u12-rle.dcm', 'u12-jpeg70.dcm', 'u12-jpegls80.dcm', 'u12-j2k90.dcm', 'u12-jpeg51.dcm', 'u12-deflated.dcm'])(
  '%s cut short anywhere is refused',
  async (file) => {
    const whole = reference(file);
    for (const share of [0.1, 0.3, 0.6, 0.9, 0.99])
      expect(await refusal(whole.subarray(0, share * whole.length))).not.toMatch(/^decoded/);
    expect(await refusal(whole.subarray(0, -2))).not.toMatch(/^decoded/);
  },
);

/** A reference film whose one fragment is changed; the delimiter is written anew. */
function withFragment(file: string, change: (fragment: Uint8Array) => Uint8Array): Uint8Array {
  const bytes = reference(file);
  const at = Buffer.from(bytes).indexOf(Buffer.from([0xe0, 0x7f, 0x10, 0x00]));
  const view = new DataView(bytes.buffer);
  const first = at + 12 + 8 + view.getUint32(at + 12 + 4, true);
  const fragment = bytes.slice(first + 8, first + 8 + view.getUint32(first + 4, true));
  return joined([bytes.subarray(0, at), encapsulated([change(fragment)])]);
}

test('a fragment rewritten unchanged decodes: the tests below damage nothing else', async () => {
  for (const file of ['u12-rle.dcm', 'u12-jpeg70.dcm', 'u12-jpegls80.dcm', 'u12-j2k90.dcm'])
    expect(await refusal(withFragment(file, (f) => f))).toBe('decoded 47 x 61');
});

test('a compressed stream cut within its fragment is refused: codecs fill up what is missing', async () => {
  for (const file of [
    'u12-rle.dcm',
    'u12-jpeg57.dcm',
    'u12-jpeg70.dcm',
    'u12-jpegls80.dcm',
    'u12-j2k90.dcm',
    'u12-jpeg51.dcm',
  ])
    for (const share of [0.2, 0.5, 0.8])
      expect(await refusal(withFragment(file, (f) => f.slice(0, share * f.length))), `${file} ${share}`).not.toMatch(
        /^decoded/,
      );
});

test('a frame taller than Rows is refused: codecs hand back a longer picture', async () => {
  const said = await refusal(
    patched(
      reference('u12-jpeg70.dcm'),
      [0x28, 0, 0x10, 0, 0x55, 0x53, 2, 0, 61],
      [0x28, 0, 0x10, 0, 0x55, 0x53, 2, 0, 60],
    ),
  );
  expect(said).toBe(
    'the compressed stream holds 47 x 61 pixels of 1 samples, the header says 47 x 60 pixels of 1 samples @ PixelData (7FE0,0010)',
  );
});

test('streams that claim 65500 x 65500 pixels are refused before memory is taken', async () => {
  const jpeg = withFragment('u12-jpeg70.dcm', (f) => patched(f, [0, 61, 0, 47], [0xff, 0xdc, 0xff, 0xdc]));
  expect(await refusal(jpeg)).toMatch(/^the compressed stream holds 65500 x 65500 pixels/);
  const j2k = withFragment('u12-j2k90.dcm', (f) => {
    new DataView(f.buffer).setUint32(8, 65500);
    new DataView(f.buffer).setUint32(12, 65500);
    return f;
  });
  expect(await refusal(j2k)).toMatch(/^the (compressed stream holds 65500|JPEG 2000 header claims)/);
});

test('a JPEG 2000 stream of a million tiles, or with one left out, is refused', async () => {
  const tiles = (width: number, height: number) =>
    withFragment('u12-j2k90.dcm', (f) => {
      new DataView(f.buffer).setUint32(24, width);
      new DataView(f.buffer).setUint32(28, height);
      return f;
    });
  expect(await refusal(tiles(0, 61))).toMatch(/^the JPEG 2000 header claims 0 tiles/);
  expect(await refusal(tiles(47, 0xffff))).toBe('decoded 47 x 61');
  const offset = withFragment('u12-htj2k202.dcm', (f) => {
    new DataView(f.buffer).setUint32(36, 36);
    return f;
  });
  // The codec, left alone with this one, never comes back.
  expect(await refusal(offset)).toMatch(/^the JPEG 2000 header claims 0 tiles/);
  expect(await refusal(tiles(24, 61))).toMatch(/^the JPEG 2000 stream holds 1 of 2 tiles/);
});

test('compressed pixels without their end mark, or with a fragment past the end, are refused', async () => {
  const packed = words(1, 2, 3);
  const head = part10({ PixelData: undefined }, `${SYNTAX}.5`);
  expect(await refusal(joined([head, encapsulated([packed], false)]))).toMatch(
    /^the compressed pixel data is cut short/,
  );
  expect(await refusal(joined([head, encapsulated([packed]).subarray(0, -12)]))).toMatch(
    /^the compressed pixel data is cut short/,
  );
});

test('a series whose number of frames is lost or wrong is refused, not taken for one picture', async () => {
  const series = (frames: string) =>
    patched(
      reference('mf12-jpeg70.dcm'),
      [...ascii('IS'), 2, 0, ...ascii('3 ')],
      [...ascii('IS'), 2, 0, ...ascii(frames)],
    );
  expect(await refusal(series('3 '))).toBe('decoded 23 x 30');
  expect(await refusal(series('1 '))).toBe(
    'the pixel data holds 3 pictures, the header says 1 frames @ NumberOfFrames (0028,0008)',
  );
  expect(await refusal(series('2 '))).toBe(
    'the pixel data holds 3 fragments, the header says 2 frames @ NumberOfFrames (0028,0008)',
  );
});

test('RLE segments that point outside, end early or run over are refused', async () => {
  const shifted = (offset: number) =>
    withFragment('u12-rle.dcm', (f) => {
      new DataView(f.buffer).setUint32(8, offset, true);
      return f;
    });
  expect(await refusal(shifted(0xffffff00))).toMatch(/^the table of segments points outside/);
  expect(await refusal(shifted(60))).toMatch(/^the table of segments points outside/);
  expect(await refusal(shifted(90))).toMatch(/^the packed data/);
});

test('a deflated data set that unpacks without end is stopped', async () => {
  const bomb = deflateRawSync(new Uint8Array(210 * 1024 * 1024), { level: 1 });
  const said = await refusal(joined([part10({}, `${SYNTAX}.1.99`).subarray(0, 162), bomb]));
  expect(said).toMatch(/^its packed data unpacks to more than 209715200 bytes/);
});

test('sequences nested 200,000 deep are refused, not run into the ground', async () => {
  const open = Uint8Array.of(
    0x40,
    0,
    0x75,
    0x02,
    0x53,
    0x51,
    0,
    0,
    255,
    255,
    255,
    255,
    0xfe,
    0xff,
    0,
    0xe0,
    255,
    255,
    255,
    255,
  );
  const nested = joined([header, ...Array.from({ length: 200_000 }, () => open)]);
  expect(await refusal(nested)).toMatch(/nested too deep|more than/);
});

test('a sequence of more items than any film has is refused', async () => {
  const open = Uint8Array.of(0x40, 0, 0x75, 0x02, 0x53, 0x51, 0, 0, 255, 255, 255, 255);
  const items = new Uint8Array(8 * 200_001);
  for (let at = 0; at < items.length; at += 8) items.set([0xfe, 0xff, 0, 0xe0], at);
  expect(await refusal(joined([header, open, items]))).toMatch(/^the header holds more than 200000 elements/);
});

test('more elements than a header has are refused', async () => {
  const many = Array.from({ length: 20_001 }, (_, i) => joined([words(0x0029, i), ascii('LO'), words(0)]));
  expect(await refusal(joined([header, ...many]))).toMatch(/^the header holds more than 20000 elements/);
});

test('what is no film at all is named so', async () => {
  expect(await refusal(new Uint8Array(0))).toBe('film.dcm is empty @ ');
  expect(await refusal(ascii('%PDF-1.7 a report'))).toBe('film.dcm is no DICOM, PNG, TIFF or JPEG file @ byte 0');
});
