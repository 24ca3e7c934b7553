import { expect, test } from 'vitest';
import type { Film, GreyImage } from '../model/film.ts';
import { type Look, windowToBytes } from './display.ts';
import { greyImage } from './grey-image.ts';
import { looksOf, suggestWindow } from './looks.ts';

const grey: Film['grey'] = {
  slope: 1,
  intercept: 0,
  windows: [],
  voiFunction: 'LINEAR',
  intensitySign: null,
  intensityRelationship: null,
};
const image = (values: GreyImage['pixels'], rest: Partial<GreyImage> = {}): GreyImage => ({
  ...{ rows: 1, cols: values.length, pixels: values, photometric: 'MONOCHROME2', grey },
  ...rest,
});
const whole: Look = { kind: 'window', window: { centre: 2048, width: 4096 }, voiFunction: 'LINEAR' };
const shown = (img: GreyImage, look: Look): number[] => {
  const bytes = new Uint8ClampedArray(img.rows * img.cols);
  windowToBytes(img, look, bytes);
  return [...bytes];
};

test('the lookup gives each of 12 bits the level that the window function gives it, rounded', () => {
  expect(shown(image(Uint16Array.from([0, 1024, 2048, 4095])), whole)).toEqual([0, 64, 128, 255]);
});

test('signed values below zero are looked up in their own place', () => {
  const look: Look = { ...whole, window: { centre: 0, width: 200 } };
  const levels = [0, 128, 255];
  expect(shown(image(Int16Array.from([-100, 0, 99])), look)).toEqual(levels);
  expect(shown(image(Int8Array.from([-100, 0, 99])), look)).toEqual(levels);
  expect(shown(image(Float32Array.from([-100, 0, 99])), look)).toEqual(levels);
});

test('rescale comes before the window, PS3.3 C.11.1', () => {
  const look: Look = { ...whole, window: { centre: 0, width: 200 } };
  expect(shown(image(Uint16Array.from([0, 50]), { grey: { ...grey, slope: 2, intercept: -100 } }), look)).toEqual([
    0, 128,
  ]);
});

test('MONOCHROME1 shows its lowest value white, and INVERSE asks for the same one swap', () => {
  const values = Uint16Array.from([0, 4095]);
  const inverse = { grey: { ...grey, presentationInverse: true } };
  expect(shown(image(values, { photometric: 'MONOCHROME1' }), whole)).toEqual([255, 0]);
  expect(shown(image(values, { photometric: 'MONOCHROME1', ...inverse }), whole)).toEqual([255, 0]);
  expect(shown(image(values, inverse), whole)).toEqual([255, 0]);
  expect(shown(image(values, { photometric: 'MONOCHROME1' }), { ...whole, swapped: true })).toEqual([0, 255]);
});

test('a table of 10 bits is stretched to the screen', () => {
  const table = { name: 'dense bone', first: 10, bits: 10, values: Uint16Array.from([0, 1023]) };
  expect(shown(image(Uint8Array.from([10, 11])), { kind: 'table', table })).toEqual([0, 255]);
});

test('RGBA carries the grey three times and is opaque', () => {
  const target = new Uint8ClampedArray(8);
  windowToBytes(image(Uint16Array.from([1024, 4095])), whole, target);
  expect([...target]).toEqual([64, 64, 64, 255, 255, 255, 255, 255]);
});

test('a target of another size is refused', () => {
  expect(() => windowToBytes(image(Uint8Array.from([1, 2])), whole, new Uint8Array(3))).toThrow(
    'the target holds 3 bytes',
  );
});

test('the suggested window spans the picture, not a collimated surround nor its padding', () => {
  const values = Uint16Array.from({ length: 20_000 }, (_, i) => (i < 8000 ? 0 : 1000 + (i % 501)));
  values.fill(65535, 0, 4000);
  const { centre, width } = suggestWindow(image(values, { grey: { ...grey, padding: 65535 } }));
  // 0.5 % of 501 values beyond each end: 2.5 of them, and the sample takes every pixel here.
  expect(Math.abs(centre - 0.5 - 1250)).toBeLessThanOrEqual(1);
  expect(width).toBeGreaterThan(494);
  expect(width).toBeLessThanOrEqual(501);
});

test('a film of one value has a window of width 1 at it', () => {
  expect(suggestWindow(image(new Uint16Array(100).fill(7)))).toEqual({ centre: 7.5, width: 1 });
});

test('the looks are those of the file first, then one fitted to the picture', () => {
  const windows = [{ centre: 40, width: 400, name: 'soft parts' }];
  const names = looksOf(image(Uint8Array.from([1, 2]), { grey: { ...grey, windows } })).map((l) => l.name);
  expect(names).toEqual(['soft parts', 'fitted to the picture']);
});

const film = (rest: Partial<Film>): Film => ({
  ...{ format: 'png', rows: 1, cols: 2, frames: 1, samplesPerPixel: 1, bitsAllocated: 8, bitsStored: 8 },
  ...{ pixelRepresentation: 0, photometric: 'MONOCHROME2', transferSyntax: null, min: 0, max: 255, spacing: null },
  ...{ pixels: Uint8Array.from([1, 2]), grey, header: {}, warnings: [] },
  ...rest,
});

test('grey of a colour is its luma, ITU-R BT.601: pure green 149.685, pure blue 29.07', () => {
  const rgb = film({ samplesPerPixel: 3, photometric: 'RGB', pixels: Uint8Array.from([0, 255, 0, 0, 0, 255]) });
  expect([...greyImage(rgb).pixels]).toEqual([150, 29]);
});

test('grey of grey and alpha leaves the alpha out', () => {
  const pixels = Uint8Array.from([11, 255, 12, 0]);
  expect([...greyImage(film({ samplesPerPixel: 2, photometric: 'MONOCHROME2 and alpha', pixels })).pixels]).toEqual([
    11, 12,
  ]);
});

test('a frame is a view of the film, and one that is not there is refused', () => {
  const two = film({ frames: 2, pixels: Uint8Array.from([1, 2, 3, 4]) });
  expect([...greyImage(two, 1).pixels]).toEqual([3, 4]);
  expect(greyImage(two, 1).pixels.buffer).toBe(two.pixels.buffer);
  expect(() => greyImage(two, 2)).toThrow('no frame 2');
});
