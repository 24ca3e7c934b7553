import { expect, test } from 'vitest';
import { cutOut, halved } from './parts.ts';

const image = { rows: 3, cols: 3, pixels: Uint16Array.of(0, 4, 8, 8, 12, 16, 40, 44, 48), photometric: 'MONOCHROME2' };

test('a part holds its own pixels and nothing else', () => {
  const part = cutOut(image, { left: 1, top: 0, right: 3, bottom: 2 });
  expect(part).toMatchObject({ rows: 2, cols: 2 });
  expect([...part.pixels]).toEqual([4, 8, 12, 16]);
});

test('half the size is the mean of what is there, up to the last odd row and column', () => {
  const half = halved(image);
  expect(half).toMatchObject({ rows: 2, cols: 2 });
  expect([...half.pixels]).toEqual([6, 12, 42, 48]);
});
