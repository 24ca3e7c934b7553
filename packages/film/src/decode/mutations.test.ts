/** 500 damaged copies of the reference films, the same every time: each is refused in words or decoded, nothing else. */
import { readdirSync, readFileSync } from 'node:fs';
import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import type { Film } from '../model/film.ts';
import { decodeFilm } from './decode-film.ts';
import { MOST_BYTES, mutated } from './mutated.ts';

const COPIES = 500;
const folder = new URL('../../cases/dicom/', import.meta.url);
const films = readdirSync(folder)
  .filter((file) => !/\.(json|md)$/.test(file))
  .sort()
  .map((file) => ({ file, bytes: Uint8Array.from(readFileSync(new URL(file, folder))) }));

/** Samples that may differ: none where a checksum covers them, one for each overwritten byte where they lie as they are. */
function mostChanged(file: string): number | null {
  if (file.endsWith('.png')) return 0;
  return /^\w+(-implicit|-bigendian)?\.dcm$/.test(file) ? MOST_BYTES : null;
}

/** Samples of a damaged copy that are not those of the whole film; all of them where the shape is another. */
async function changed(copy: Film, file: string): Promise<number> {
  const whole = await decodeFilm(films.find((f) => f.file === file)!.bytes, file);
  if (copy.rows !== whole.rows || copy.cols !== whole.cols || copy.frames !== whole.frames) return whole.pixels.length;
  let count = 0;
  for (let i = 0; i < whole.pixels.length; i++) if (copy.pixels[i] !== whole.pixels[i]) count++;
  return count;
}

test(`${COPIES} damaged copies: no error but a refusal, every picture returned is whole, damage changes no more than it touched`, async () => {
  let refused = 0;
  for (let seed = 1; seed <= COPIES; seed++) {
    const { file, bytes } = films[seed % films.length]!;
    try {
      const film = await decodeFilm(mutated(bytes, seed), file);
      expect(film.pixels.length, `${file}, seed ${seed}`).toBe(
        film.rows * film.cols * film.samplesPerPixel * film.frames,
      );
      expect(film.max, `${file}, seed ${seed}`).toBeLessThan(2 ** film.bitsStored);
      const most = mostChanged(file);
      if (most !== null) expect(await changed(film, file), `${file}, seed ${seed}`).toBeLessThanOrEqual(most);
    } catch (error) {
      if (!(error instanceof InputError)) throw new Error(`${file}, seed ${seed}`, { cause: error });
      expect(error.what, `${file}, seed ${seed}`).not.toBe('');
      refused += 1;
    }
  }
  expect(refused).toBeGreaterThan(COPIES / 2);
});

// Found by the bench's longer run; each once threw something other than a refusal.
test.each([['u16-tiles.tif', 13996]])('%s, seed %d: refused in words', async (file, seed) => {
  const film = films.find((f) => f.file === file)!;
  await expect(decodeFilm(mutated(film.bytes, seed), file)).rejects.toBeInstanceOf(InputError);
});
