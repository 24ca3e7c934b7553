/** Films written by other programs, whose pixels are known: cases/dicom/README.md. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decodeFilm } from './decode-film.ts';
import { describeFilm, storedBytes } from './describe-film.ts';

interface Case {
  readonly file: string;
  readonly origin: string;
  readonly facts: object;
}

const folder = new URL('../../cases/dicom/', import.meta.url);
const { files }: { files: Case[] } = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8'));
const read = (file: string) => decodeFilm(readFileSync(new URL(file, folder)), file);

test.each(files)('$file by $origin: every fact and every pixel', async ({ file, facts }) => {
  const film = await read(file);
  const storedPixelsSha256 = createHash('sha256').update(storedBytes(film)).digest('hex');
  expect({ ...describeFilm(film), storedPixelsSha256 }).toMatchObject(facts);
});

test('the same film says the same whichever way it was written', async () => {
  const described = async (file: string) => ({ ...describeFilm(await read(file)), transferSyntax: '' });
  const plain = await described('u12.dcm');
  for (const way of ['implicit', 'bigendian', 'deflated', 'rle', 'jpeg57', 'jpeg70', 'jpegls80', 'j2k90'])
    expect(await described(`u12-${way}.dcm`)).toEqual(plain);
  expect(plain).toMatchObject({
    header: { species: 'Red squirrel' },
    spacing: { rowMm: 0.1, colMm: 0.1, plane: 'detector' },
  });
});

test('no film is changed by being read, nor by what is done to its values', async () => {
  for (const { file } of files) {
    const bytes = readFileSync(new URL(file, folder));
    const before = Uint8Array.from(bytes);
    const film = await decodeFilm(bytes, file);
    film.pixels.fill(1);
    expect(Uint8Array.from(bytes), file).toEqual(before);
  }
});

test('a film compressed with loss says so', async () => {
  const words = 'the film was compressed with loss: fine detail may be changed';
  for (const file of ['u8m1-jpeg50.dcm', 'u12-jpeg51.dcm', 'u12-jpegls81.dcm', 'u12-j2k91.dcm'])
    expect((await read(file)).warnings).toEqual([words]);
});

test('a photograph says how the camera was held and is left as stored', async () => {
  const film = await read('u8.jpg');
  expect(film.header).toEqual({ orientation: '6' });
  expect([film.rows, film.cols]).toEqual([61, 47]);
});
