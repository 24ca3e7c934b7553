/** A case given away and brought in: word for word, in one step, and no bundle does harm. `BONEWRIGHT_FUZZ=2000 npx vitest run` on this file is the long run. */
import { createHash } from 'node:crypto';
import { checkEvent } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { canonicalJson, chainHash, type Store } from '@bonewright/store';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { owner } from '../test/people.ts';
import { CASE, note, opened, served } from '../test/served.ts';
import { readBundle } from './read-bundle.ts';
import { writeBundle } from './write-bundle.ts';

const COUNT = Number(process.env.BONEWRIGHT_FUZZ ?? 300);
const PNG = strToU8('\x89PNG invented for this test', true);
const MADE = new Date('2026-11-25T21:00:00Z');
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const film = () =>
  checkEvent({
    ...note(2),
    id: 'film-event-2',
    kind: 'film-added',
    payload: {
      ...{ filmId: 'film-aaaa', sha256: sha256(PNG), fileName: '../<b>x</b>.PNG', view: null, takenAt: null },
      ...{ byteLength: PNG.length, rows: 10, cols: 10 },
    },
  });

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

async function bundleOf(store: Store): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of await writeBundle(store, CASE, MADE)) chunks.push(chunk);
  return new Uint8Array(Buffer.concat(chunks));
}

async function withFilm(): Promise<Store> {
  const { store } = await served(undefined, { isEmptyWanted: true });
  await store.putAttachment(once(PNG));
  await store.append([opened(), film(), note(3, '=HYPERLINK("x")')]);
  return store;
}

const empty = async (): Promise<Store> => (await served(undefined, { isEmptyWanted: true })).store;

type Change = (files: Record<string, Uint8Array>) => Record<string, Uint8Array | null>;

/** The bundle with some files otherwise (null: left out), its manifest made to fit; the chain too where it is asked. */
function forged(zip: Uint8Array, change: Change, chainOf = (kept: string, _events: string) => kept): Uint8Array {
  const before = unzipSync(zip);
  const files: Record<string, Uint8Array> = {};
  for (const [path, bytes] of Object.entries({ ...before, ...change(before) })) if (bytes) files[path] = bytes;
  const { 'manifest.json': kept, ...others } = files;
  const manifest = JSON.parse(strFromU8(kept!));
  const listed = Object.entries(others).map(([path, bytes]) => ({ path, sha256: sha256(bytes) }));
  const chain = chainOf(manifest.chain, strFromU8(others['events.json'] ?? new Uint8Array()));
  return zipSync({ ...others, 'manifest.json': strToU8(JSON.stringify({ ...manifest, chain, files: listed })) });
}

/** The chain that somebody who forged events would write. */
function forgedChain(kept: string, events: string): string {
  try {
    return JSON.parse(events).events.map(canonicalJson).reduce(chainHash, '');
  } catch {
    return kept;
  }
}

test('what is brought in is the record and the film, word for word, and is sound', async () => {
  const [there, here] = [await withFilm(), await empty()];
  expect(await readBundle(here, await bundleOf(there))).toEqual({ caseId: CASE, added: 3 });
  expect(await here.readText(CASE)).toEqual(await there.readText(CASE));
  expect((await here.getAttachment(sha256(PNG)))?.byteLength).toBe(PNG.length);
  expect(await here.verify()).toEqual([]);
});

test('brought in again it adds nothing; gone on there, it adds what is new; gone on here, it changes nothing', async () => {
  const [there, here] = [await withFilm(), await empty()];
  const first = await bundleOf(there);
  await readBundle(here, first);
  expect((await readBundle(here, first)).added).toBe(0);
  await there.append([note(4)]);
  expect((await readBundle(here, await bundleOf(there))).added).toBe(1);
  await here.append([note(5)]);
  expect((await readBundle(here, first)).added).toBe(0);
  expect(await here.read(CASE)).toHaveLength(5);
});

test('both sides went on: said with numbers, and neither is changed', async () => {
  const [there, here] = [await withFilm(), await empty()];
  await readBundle(here, await bundleOf(there));
  await there.append([note(4, 'T. Okafor'), note(5, 'T. Okafor')]);
  await here.append([note(4, 'A. Marsh')]);
  const before = await here.readText(CASE);
  await expect(readBundle(here, await bundleOf(there))).rejects.toThrow(
    /both sides went on after event 3: 1 events here and 2 in the copy/,
  );
  expect(await here.readText(CASE)).toEqual(before);
});

test('every file has the hash of the manifest, and the chain is the one of the record', async () => {
  const there = await withFilm();
  const files = unzipSync(await bundleOf(there));
  const manifest = JSON.parse(strFromU8(files['manifest.json']!));
  const named: { path: string; sha256: string }[] = manifest.files;
  expect(named.map(({ path }) => path).sort()).toEqual(
    Object.keys(files)
      .filter((path) => path !== 'manifest.json')
      .sort(),
  );
  for (const file of named) expect(sha256(files[file.path]!)).toBe(file.sha256);
  expect(manifest.chain).toBe((await there.readText(CASE)).reduce(chainHash, ''));
});

test('the page has no script and takes no name for markup; the table works nothing out', async () => {
  const files = unzipSync(await bundleOf(await withFilm()));
  const page = strFromU8(files['index.html']!);
  expect(page).toContain('&lt;b&gt;x&lt;/b&gt;');
  expect(page).not.toMatch(/<script|<b>|https?:/);
  expect(page).toContain(`<img src="files/${sha256(PNG)}.png"`);
  expect(strFromU8(files['story.csv']!)).toContain(`,"'=HYPERLINK(""x"")",note-added,`);
});

const FILM = `files/${sha256(PNG)}.png`;
const otherSigner: Change = (files) => ({
  'events.json': strToU8(strFromU8(files['events.json']!).replaceAll('R. Fenn', 'M. Other')),
});

test.each<[string, RegExp, Change]>([
  ['a film changed', /hash/, () => ({ [FILM]: strToU8('other') })],
  ['a film left out', /not in the copy/, () => ({ [FILM]: null })],
  ['a path out of the folder', /no file of such a name/, () => ({ '../evil.sh': PNG })],
  ['a signature changed', /vouches/, otherSigner],
  ['no events', /events\.json/, () => ({ 'events.json': null })],
])('%s, the manifest made to fit: refused in words, nothing recorded', async (_, words, change) => {
  const here = await empty();
  await expect(readBundle(here, forged(await bundleOf(await withFilm()), change))).rejects.toThrow(words);
  expect(await here.list()).toEqual([]);
});

test('over HTTP: taken and brought in by the owner', async () => {
  const on = await served(undefined, { isEmptyWanted: true });
  const { ask } = await owner(on);
  await on.store.append([opened(), note(2)]);
  const copy = await ask({ url: `/api/cases/${CASE}/copy` });
  expect(copy.statusCode).toBe(200);
  const headers = { 'content-type': 'application/octet-stream' };
  const brought = await ask({ method: 'POST', url: '/api/copies', headers, payload: copy.rawPayload });
  expect(brought.json()).toEqual({ caseId: CASE, added: 0 });
  const refused = await ask({ method: 'POST', url: '/api/copies', headers, payload: Buffer.from('no zip') });
  expect(refused.statusCode).toBe(400);
  expect(refused.json().error).toMatch(/unpacked/);
});

/** Numbers that look random, the same every time (mulberry32). */
function numbers(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) % below;
  };
}

const HOSTILE = ['null', '[]', '{}', '-1', '1e999', '"\\u0000"', `"${'a'.repeat(5000)}"`, '{"__proto__":{"x":1}}'];

/** Bytes turned, cut or doubled; or a value in the events or the manifest exchanged, hashes made to fit. */
function spoiled(zip: Uint8Array, draw: (below: number) => number): Uint8Array {
  const way = draw(4);
  if (way === 0) return zip.slice(0, draw(zip.length));
  if (way === 1) {
    const copy = zip.slice();
    for (let n = 1 + draw(8); n > 0; n--) copy[draw(copy.length)] = draw(256);
    return copy;
  }
  const swap = (text: string): string => {
    const values = [...text.matchAll(/(?<=:)(?:"[^"]*"|-?\d+|null)/g)];
    const value = values[draw(values.length)];
    if (!value) return text;
    return text.slice(0, value.index) + HOSTILE[draw(HOSTILE.length)] + text.slice(value.index + value[0].length);
  };
  const files = unzipSync(zip);
  const swapped = (path: string) => ({ [path]: strToU8(swap(strFromU8(files[path]!).replaceAll('": ', '":'))) });
  if (way === 2) return forged(zip, () => swapped('events.json'), forgedChain);
  return zipSync({ ...files, ...swapped('manifest.json') });
}

test(`${COUNT} spoiled bundles (seed 1): words, never a fault of ours, never part of a case`, async () => {
  const whole = await bundleOf(await withFilm());
  const here = await empty();
  const draw = numbers(1);
  const faults: unknown[] = [];
  let refused = 0;
  for (let i = 0; i < COUNT; i++) {
    try {
      await readBundle(here, spoiled(whole, draw));
    } catch (error) {
      refused++;
      if (!(error instanceof InputError)) faults.push(error);
    }
    const recorded = (await here.read(CASE)).length;
    if (recorded !== 0 && recorded !== 3) faults.push(`${recorded} events of 3`);
  }
  expect(faults).toEqual([]);
  expect(refused).toBeGreaterThan(COUNT * 0.8);
  expect(await here.verify()).toEqual([]);
});
