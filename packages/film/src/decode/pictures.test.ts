/** Damaged and hostile PNG, TIFF and JPEG files; the whole ones are in cases/dicom. */
import { readFileSync } from 'node:fs';
import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { joined } from './bytes.ts';
import { decodeFilm } from './decode-film.ts';
import { unpackLzw } from './packed/lzw.ts';
import { unpackBits } from './packed/pack-bits.ts';

const reference = (file: string): Uint8Array =>
  Uint8Array.from(readFileSync(new URL(`../../cases/dicom/${file}`, import.meta.url)));

async function refusal(bytes: Uint8Array): Promise<string> {
  try {
    const film = await decodeFilm(bytes, 'picture');
    return `decoded ${film.cols} x ${film.rows}`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return `${error.what} @ ${error.path}`;
  }
}

const changed = (file: string, change: (view: DataView) => void): Uint8Array => {
  const bytes = reference(file);
  change(new DataView(bytes.buffer));
  return bytes;
};

test.each([
  'u16.png',
  'u16-interlaced.png',
  'u16-tiff_lzw.tif',
  'u16-tiles.tif',
  'u16-packbits.tif',
  'rgb-planes.tif',
  'u8.jpg',
  'rgb.jpg',
])('%s cut short anywhere is refused', async (file) => {
  const whole = reference(file);
  expect(await refusal(whole)).toBe('decoded 47 x 61');
  for (const share of [0.02, 0.2, 0.5, 0.8])
    expect(await refusal(whole.subarray(0, share * whole.length))).not.toMatch(/^decoded/);
});

test('headers that claim 60000 x 60000 pixels are refused before memory is taken', async () => {
  const png = changed('u16.png', (v) => {
    v.setUint32(16, 60000);
    v.setUint32(20, 60000);
  });
  expect(await refusal(png)).toBe(
    'the header claims 60000 x 60000 pixels, 1 samples each, 1 frames: 3600000000 values @ IHDR',
  );
  const jpeg = reference('u8.jpg');
  const at = Buffer.from(jpeg).indexOf(Buffer.from([0, 61, 0, 47]));
  jpeg.set([0xea, 0x60, 0xea, 0x60], at);
  expect(await refusal(jpeg)).toMatch(/^the header claims 60000 x 60000 pixels/);
});

test('a PNG whose data unpacks to more or less than its header implies is refused', async () => {
  const png = reference('u16.png');
  const head = png.slice(0, 33);
  const chunk = (type: string, data: Uint8Array): Uint8Array => {
    const length = new Uint8Array(4);
    new DataView(length.buffer).setUint32(0, data.length);
    return joined([length, Uint8Array.from(type, (c) => c.charCodeAt(0)), data, new Uint8Array(4)]);
  };
  const with_ = (bytes: number) =>
    joined([head, chunk('IDAT', zlibSync(new Uint8Array(bytes))), chunk('IEND', new Uint8Array(0))]);
  const needed = 61 * (1 + 2 * 47);
  expect(await refusal(with_(5_000_000))).toBe(`its packed data unpacks to more than ${needed} bytes @ IDAT`);
  expect(await refusal(with_(needed - 1))).toBe(
    `the packed data unpacks to ${needed - 1} bytes, its header needs ${needed} @ IDAT`,
  );
  expect(await refusal(with_(needed))).toMatch(/^the PNG is damaged \(CRC mismatch/);
});

/** Where the value of a field of the first directory lies. */
function field(view: DataView, tag: number): number {
  const start = view.getUint32(4, true);
  for (let i = 0; i < view.getUint16(start, true); i++)
    if (view.getUint16(start + 2 + 12 * i, true) === tag) return start + 2 + 12 * i + 8;
  throw new Error(`no field ${tag}`);
}

test.each<[string, number, number, RegExp]>([
  ['packing nobody reads', 259, 7, /^the TIFF uses packing 7, which is not read @ Compression/],
  ['colours of another kind', 262, 6, /^the TIFF uses pictures of kind 6 with 1 samples, which is not read/],
  ['rows left out', 257, 60, /^the packed data is damaged/],
  ['rows added', 257, 62, /^the (packed data is|TIFF names)/],
  ['a strip outside the file', 273, 1_000_000, /^the picture lies outside the file/],
  ['an odd number of bits', 258, 12, /^the TIFF uses 12 bits a sample, which is not read/],
])('TIFF with %s is refused', async (_, tag, value, said) => {
  const bytes = changed('u16-packbits.tif', (view) => view.setUint16(field(view, tag), value & 0xffff, true));
  if (value > 0xffff) new DataView(bytes.buffer).setUint32(field(new DataView(bytes.buffer), tag), value, true);
  expect(await refusal(bytes)).toMatch(said);
});

test('a TIFF directory that points to itself or outside ends in a refusal', async () => {
  expect(await refusal(changed('u16-packbits.tif', (v) => v.setUint32(4, 0xfffffff0, true)))).toMatch(
    /lies outside the file @ byte 4/,
  );
  expect(await refusal(changed('u16-packbits.tif', (v) => v.setUint32(4, 4, true)))).toMatch(
    /lies outside the file @ byte 4/,
  );
});

test('min-is-white is left as stored and named, TIFF 6.0 section 8', async () => {
  const whole = await decodeFilm(reference('u16-packbits.tif'), 'a');
  const white = await decodeFilm(
    changed('u16-packbits.tif', (v) => v.setUint16(field(v, 262), 0, true)),
    'b',
  );
  expect(white.photometric).toBe('MONOCHROME1');
  expect(white.pixels).toEqual(whole.pixels);
});

test.each([0x01, 0xd0, 0xd8, 0xd9])(
  'a JPEG header with the marker FF %i, which has no length, is refused: a codec left alone with FF 01 never comes back',
  async (marker) => {
    const jpeg = reference('rgb.jpg');
    expect([...jpeg.subarray(20, 22)]).toEqual([0xff, 0xdb]);
    jpeg[21] = marker;
    expect(await refusal(jpeg)).toBe('the JPEG header is damaged @ the JPEG stream, byte 20 of the compressed stream');
  },
);

test('fill bytes before a marker are no damage, ITU-T T.81 B.1.1.2', async () => {
  const jpeg = reference('rgb.jpg');
  const filled = joined([jpeg.subarray(0, 20), Uint8Array.of(0xff, 0xff, 0xff), jpeg.subarray(20)]);
  expect((await decodeFilm(filled, 'a')).pixels).toEqual((await decodeFilm(jpeg, 'b')).pixels);
});

test('a JPEG in four colours is refused by name', async () => {
  const jpeg = reference('u8.jpg');
  const sof = Buffer.from(jpeg).indexOf(Buffer.from([0, 61, 0, 47]));
  jpeg[sof + 4] = 4;
  expect(await refusal(jpeg)).toBe('the JPEG has 4 samples a pixel @ the JPEG stream');
});

test('PackBits and LZW never give more or fewer bytes than asked, whatever they are fed', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), fc.integer({ min: 0, max: 400 }), (packed, length) => {
      for (const unpack of [unpackBits, unpackLzw]) {
        try {
          expect(unpack(packed, length, '').length).toBe(length);
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }
    }),
  );
});

// Apple Technical Note TN1023, Understanding PackBits, the example printed there (from memory).
test('PackBits: runs and copies as in the published example', () => {
  const packed = Uint8Array.of(
    0xfe,
    0xaa,
    0x02,
    0x80,
    0x00,
    0x2a,
    0xfd,
    0xaa,
    0x03,
    0x80,
    0x00,
    0x2a,
    0x22,
    0xf7,
    0xaa,
  );
  const plain = [
    0xaa,
    0xaa,
    0xaa,
    0x80,
    0x00,
    0x2a,
    0xaa,
    0xaa,
    0xaa,
    0xaa,
    0x80,
    0x00,
    0x2a,
    0x22,
    ...Array(10).fill(0xaa),
  ];
  expect([...unpackBits(packed, 24, '')]).toEqual(plain);
});
