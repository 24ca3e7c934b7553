import { expect, test } from 'vitest';
import { decodeFilm } from '../decode/decode-film.ts';
import { sizeOfFilm } from './square-up.ts';
import { writePng } from './write-png.ts';

test.each([[255], [40_000]])('an image up to %i comes back from its file, rounded', async (most) => {
  const image = { rows: 1, cols: 3, pixels: Float32Array.of(0, 7.4, most), photometric: 'MONOCHROME2' };
  const film = await decodeFilm(writePng(image), 'made.png');
  expect(film).toMatchObject({ rows: 1, cols: 3 });
  expect([...film.pixels]).toEqual([0, 7, most]);
});

test('a film of 180 x 240 mm seen foreshortened gets its own shape back', () => {
  const { cols, rows } = sizeOfFilm(
    [
      [0, 0],
      [180, 0],
      [180, 120],
      [0, 120],
    ],
    { widthMm: 180, heightMm: 240 },
  );
  expect([cols, rows]).toEqual([181, 241]);
});
