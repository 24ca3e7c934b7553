import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decodeFilm } from '../decode/decode-film.ts';
import { decodeIsolated, FILM_LIMITS } from './index.ts';

const film = (file: string): Uint8Array => readFileSync(new URL(`../../cases/dicom/${file}`, import.meta.url));

test('a film decoded in its own thread is the film decoded here', async () => {
  const bytes = film('u12-jpeg70.dcm');
  expect(await decodeIsolated(bytes, 'a.dcm')).toEqual(await decodeFilm(bytes, 'a.dcm'));
});

test('the bytes given stay with the caller', async () => {
  const bytes = Uint8Array.from(film('u12.dcm'));
  await decodeIsolated(bytes, 'a.dcm');
  expect(bytes).toEqual(Uint8Array.from(film('u12.dcm')));
});

test('a refusal crosses with what, where and hint', async () => {
  const cut = film('u12.dcm').subarray(0, 5000);
  const here = await decodeFilm(cut, 'a.dcm').catch((error: unknown) => error);
  const there = await decodeIsolated(cut, 'a.dcm').catch((error: unknown) => error);
  expect(there).toEqual(here);
  expect(there).toMatchObject({ name: 'InputError', path: 'PixelData (7FE0,0010)' });
});

test('a film that takes longer than it may is refused, its thread ended', async () => {
  const limits = { ...FILM_LIMITS, milliseconds: 1 };
  await expect(decodeIsolated(film('u12-j2k90.dcm'), 'a.dcm', limits)).rejects.toMatchObject({
    name: 'InputError',
    what: 'the film could not be read within 0.001 s',
  });
});

test('a film that takes more memory than it may is refused', async () => {
  const limits = { ...FILM_LIMITS, bytes: 2 ** 20 };
  await expect(decodeIsolated(film('u12-j2k90.dcm'), 'a.dcm', limits)).rejects.toMatchObject({
    name: 'InputError',
    what: 'the film needs more memory than a film may',
  });
});

test('films asked for at once all come, a refused one among them', async () => {
  const asked = [film('u12-rle.dcm'), film('u12.dcm').subarray(0, 3000), film('u16.png')].map((b) =>
    decodeIsolated(b, 'film'),
  );
  const outcomes = await Promise.allSettled(asked);
  expect(outcomes.map((o) => (o.status === 'fulfilled' ? o.value.format : o.reason.name))).toEqual([
    'dicom',
    'InputError',
    'png',
  ]);
});
