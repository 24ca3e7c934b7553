import { expect, test } from 'vitest';
import { lookedUp, modalityValue, windowed } from './voi.ts';

// Expected levels 0..255 from pydicom 2.3.1 apply_voi, an implementation of PS3.3 C.11.2.1 that is not this one,
// printed to three places: half a unit of the last place.
const HALF_DIGIT = 0.0005;

test.each([
  ['LINEAR', 2048, 4096, 0, 0],
  ['LINEAR', 2048, 4096, 1024, 63.766],
  ['LINEAR', 2048, 4096, 4095, 255],
  ['LINEAR', 50, 100, 0, 0],
  ['LINEAR', 50, 100, 50, 128.788],
  ['LINEAR', 50, 100, 99, 255],
  ['LINEAR_EXACT', 2048, 4096, 0, 0],
  ['LINEAR_EXACT', 2048, 4096, 1024, 63.75],
  ['LINEAR_EXACT', 2048, 4096, 4095, 254.938],
  ['LINEAR_EXACT', 50, 100, 50, 127.5],
  ['LINEAR_EXACT', 50, 100, 99, 252.45],
  ['SIGMOID', 2048, 4096, 0, 30.397],
  ['SIGMOID', 2048, 4096, 2048, 127.5],
  ['SIGMOID', 2048, 4096, 4095, 224.577],
  ['SIGMOID', 1000, 400, 800, 30.397],
] as const)('%s, centre %d, width %d: value %d gets level %d, pydicom', (kind, centre, width, x, level) => {
  expect(Math.abs(windowed(kind, { centre, width }, x) - level)).toBeLessThanOrEqual(HALF_DIGIT);
});

// 255 / (1 + exp(-4 * 100 / 400)), closed form, printed to two places.
test('SIGMOID, centre 1000, width 400: value 1100 gets level 186.42', () => {
  expect(windowed('SIGMOID', { centre: 1000, width: 400 }, 1100)).toBeCloseTo(186.42, 2);
});

test('a LINEAR window of width 1 is a step between two whole values, PS3.3 C.11.2.1.2.1 note 2', () => {
  const window = { centre: 100, width: 1 };
  expect([99, 100].map((x) => windowed('LINEAR', window, x))).toEqual([0, 255]);
});

test('a table holds its first entry below its range and its last above, PS3.3 C.11.1.1', () => {
  const table = { name: '', first: -2, bits: 8, values: Uint16Array.from([7, 8, 9]) };
  expect([-50, -2, -1, 0, 50].map((x) => lookedUp(table, x))).toEqual([7, 7, 8, 9, 9]);
});

test('a modality table stands in for the rescale, it does not come on top', () => {
  const modalityTable = { name: '', first: 0, bits: 16, values: Uint16Array.from([500, 600]) };
  expect(modalityValue({ slope: 2, intercept: -10, modalityTable }, 1)).toBe(600);
  expect(modalityValue({ slope: 2, intercept: -10 }, 1)).toBe(-8);
});
