/** Films written by other programs, whose pixels are known: cases/dicom/README.md. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decodeFilm } from './decode-film.ts';
import { describeFilm, storedBytes } from './describe-film.ts';

const folder = new URL('../../cases/dicom/', import.meta.url);
const { files } = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8'));

test.each(files as { file: string; origin: string }[])(
  '$file by $origin: every fact and every pixel',
  async (expected) => {
    const film = await decodeFilm(readFileSync(new URL(expected.file, folder)), expected.file);
    const storedPixelsSha256 = createHash('sha256').update(storedBytes(film)).digest('hex');
    const {
      origin: _,
      pixelsFrom: __,
      note: ___,
      bytes: ____,
      file: _____,
      ...facts
    } = { pixelsFrom: '', note: '', bytes: 0, ...expected };
    expect({ ...describeFilm(film), storedPixelsSha256 }).toMatchObject(facts);
  },
);

test('the same film says the same whichever way it was written', async () => {
  const read = async (file: string) => {
    const {
      transferSyntax: _,
      warnings: __,
      ...rest
    } = describeFilm(await decodeFilm(readFileSync(new URL(file, folder)), file));
    return rest;
  };
  const plain = await read('u12.dcm');
  for (const way of ['implicit', 'bigendian', 'deflated', 'rle', 'jpeg70', 'jpegls80', 'j2k90'])
    expect(await read(`u12-${way}.dcm`)).toEqual(plain);
  expect(plain).toMatchObject({
    header: { species: 'Red squirrel' },
    spacing: { rowMm: 0.1, colMm: 0.1, plane: 'detector' },
  });
});
