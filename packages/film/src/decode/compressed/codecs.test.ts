import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decodeFilm } from '../decode-film.ts';

const film = (file: string): Uint8Array =>
  Uint8Array.from(readFileSync(new URL(`../../../cases/dicom/${file}`, import.meta.url)));

test('a film whose stream makes a codec fail spoils none that is decoded beside it', async () => {
  const whole = await decodeFilm(film('u12-jpegls80.dcm'), 'whole');
  const damaged = film('u12-jpegls80.dcm');
  damaged.fill(0xaa, damaged.length - 600, damaged.length - 200);
  for (let round = 0; round < 5; round++) {
    const outcomes = await Promise.allSettled(
      [damaged, film('u12-jpegls80.dcm'), damaged, film('u12-jpegls80.dcm')].map((b) => decodeFilm(b, 'film')),
    );
    expect(outcomes.map((o) => o.status)).toEqual(['rejected', 'fulfilled', 'rejected', 'fulfilled']);
    for (const outcome of outcomes)
      if (outcome.status === 'fulfilled') expect(outcome.value.pixels).toEqual(whole.pixels);
  }
});
