import { existsSync, mkdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { DatabaseSync } from '@photostructure/sqlite';
import { expect, test } from 'vitest';
import { openStore, restore } from './index.ts';
import { chunks, filmAdded, freshFolder, note, opened, sha256, someBytes } from './test/cases.ts';

const A = 'case-aaaa';
const film = someBytes(120_000);

async function backedUp() {
  const dir = freshFolder();
  const store = await openStore(join(dir, 'data'));
  await store.putAttachment(chunks(film));
  await store.append([opened(A), filmAdded(A, 2, film), note(A, 3)]);
  const file = join(dir, 'monday.backup');
  await store.backup(file);
  return { dir, store, file };
}

test('a backup is one file; restored elsewhere it equals its source, event for event and byte for byte', async () => {
  const { dir, store, file } = await backedUp();
  await restore(file, join(dir, 'elsewhere'));
  const restored = await openStore(join(dir, 'elsewhere'));
  expect(await restored.verify()).toEqual([]);
  expect(await restored.read(A)).toEqual(await store.read(A));
  expect(await restored.list()).toEqual(await store.list());
  const bytes = await buffer((await restored.getAttachment(sha256(film)))!.bytes);
  expect(sha256(bytes)).toBe(sha256(film));
  expect(await restored.append([note(A, 4)])).toMatchObject({ seq: 4, added: 1 });
  await Promise.all([store.close(), restored.close()]);
});

test('made while events are being recorded it holds a whole beginning of them and verifies', async () => {
  const { dir, store } = await backedUp();
  const file = join(dir, 'busy.backup');
  const writing = (async () => {
    for (let seq = 4; seq < 120; seq++) await store.append([note(A, seq)]);
  })();
  await Promise.all([store.backup(file), writing]);
  await restore(file, join(dir, 'busy'));
  const restored = await openStore(join(dir, 'busy'));
  expect(await restored.verify()).toEqual([]);
  const events = await restored.read(A);
  expect(events.length).toBeGreaterThanOrEqual(3);
  expect(events).toEqual((await store.read(A)).slice(0, events.length));
  await Promise.all([store.close(), restored.close()]);
});

test('a film that is damaged already is named and left out, and everything else is in the backup', async () => {
  const { dir, store } = await backedUp();
  writeFileSync(join(dir, 'data', 'attachments', sha256(film).slice(0, 2), sha256(film)), 'spoilt');
  const file = join(dir, 'tuesday.backup');
  expect(await store.backup(file)).toMatchObject([{ what: 'attachment', where: sha256(film) }]);
  await restore(file, join(dir, 'elsewhere'));
  const restored = await openStore(join(dir, 'elsewhere'));
  expect(await restored.read(A)).toHaveLength(3);
  expect(await restored.verify()).toMatchObject([{ what: 'attachment', where: sha256(film) }]);
  await Promise.all([store.close(), restored.close()]);
});

test('a backup that fails leaves the one before it as it was', async () => {
  const { store, file } = await backedUp();
  const before = readFileSync(file);
  await store.append([note(A, 4)]);
  mkdirSync(`${file}.part`);
  await expect(store.backup(file)).rejects.toThrow();
  expect(readFileSync(file).equals(before)).toBe(true);
  await store.close();
});

test('refused in words: no such file, something else, cut short, spoilt inside, a folder in use', async () => {
  const { dir, store, file } = await backedUp();
  const fresh = () => freshFolder();
  await expect(restore(join(dir, 'none'), fresh())).rejects.toThrow(/no such backup/);
  await expect(restore(join(dir, 'data', 'records.sqlite'), fresh())).rejects.toThrow(/not a backup/);
  await expect(restore(file, join(dir, 'data'))).rejects.toThrow(/not empty/);
  const spoilt = join(dir, 'spoilt');
  writeFileSync(spoilt, readFileSync(file));
  const database = new DatabaseSync(spoilt);
  database.exec('update attachment_bytes set bytes = zeroblob(120000)');
  database.close();
  await expect(restore(spoilt, fresh())).rejects.toThrow(/hash/);
  truncateSync(file, Math.floor(statSync(file).size / 2));
  const target = fresh();
  await expect(restore(file, target)).rejects.toMatchObject({ name: 'InputError' });
  expect(existsSync(join(target, 'records.sqlite'))).toBe(false);
  await store.close();
});
