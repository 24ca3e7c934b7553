import { existsSync, mkdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { DatabaseSync } from '@photostructure/sqlite';
import { expect, onTestFinished, test } from 'vitest';
import { openStore, restore, type Store } from '../index.ts';
import { chunks, filmAdded, freshFolder, note, opened, sha256, someBytes } from '../test/cases.ts';
import { isWithoutPostgres, onEveryDatabase, type Place, withPostgres } from '../test/places.ts';

const A = 'case-aaaa';
const film = someBytes(120_000);

const postgres = isWithoutPostgres ? null : withPostgres();

onEveryDatabase((newPlace, name) => {
  async function backedUp() {
    const place = await newPlace();
    const store = await place.open();
    onTestFinished(() => store.close());
    await store.putAttachment(chunks(film));
    await store.append([opened(A), filmAdded(A, 2, film), note(A, 3)]);
    const file = join(place.dir, '..', 'monday.backup');
    await store.backup(file);
    return { place, store, file };
  }

  async function restored(place: Place, file: string): Promise<Store> {
    const store = await place.openRestored(file);
    onTestFinished(() => store.close());
    return store;
  }

  test('a backup is one file; restored elsewhere it equals its source, event for event and byte for byte', async () => {
    const { place, store, file } = await backedUp();
    const again = await restored(place, file);
    expect(await again.verify()).toEqual([]);
    expect(await again.read(A)).toEqual(await store.read(A));
    expect(await again.list()).toEqual(await store.list());
    expect(await again.changesAfter(0, 100)).toEqual(await store.changesAfter(0, 100));
    const bytes = await buffer((await again.getAttachment(sha256(film)))!.bytes);
    expect(sha256(bytes)).toBe(sha256(film));
    expect(await again.append([note(A, 4)])).toMatchObject({ seq: 4, added: 1 });
  });

  test('made while events are being recorded it holds a whole beginning of them and verifies', async () => {
    const { place, store } = await backedUp();
    const file = join(place.dir, '..', 'busy.backup');
    const writing = (async () => {
      for (let seq = 4; seq < 120; seq++) await store.append([note(A, seq)]);
    })();
    await Promise.all([store.backup(file), writing]);
    const again = await restored(place, file);
    expect(await again.verify()).toEqual([]);
    const events = await again.read(A);
    expect(events.length).toBeGreaterThanOrEqual(3);
    expect(events).toEqual((await store.read(A)).slice(0, events.length));
  });

  test('made under load from several writers, then again at rest: restored, it equals its source hash for hash', async () => {
    const { place, store } = await backedUp();
    const file = join(place.dir, '..', 'loaded.backup');
    const cases = ['case-bbbb', 'case-cccc', 'case-dddd'];
    const writers = cases.map(async (caseId, i) => {
      const other = someBytes(5000, i + 2);
      await store.putAttachment(chunks(other));
      await store.append([opened(caseId), filmAdded(caseId, 2, other)]);
      for (let seq = 3; seq < 30; seq++) await store.append([note(caseId, seq)]);
    });
    await Promise.all([store.backup(file), ...writers]);
    const early = await restored(place, file);
    expect(await early.verify()).toEqual([]);
    const hashes = await rowsOf(store, join(place.dir, '..', 'a'));
    expect(hashes).toEqual(expect.arrayContaining(await rowsOf(early, join(place.dir, '..', 'b'))));
    await store.backup(file);
    const whole = await restored(place, file);
    expect(await rowsOf(whole, join(place.dir, '..', 'c'))).toEqual(hashes);
  });

  test('a film that is damaged already is named and left out, and everything else is in the backup', async () => {
    const { place, store } = await backedUp();
    writeFileSync(join(place.dir, 'attachments', sha256(film).slice(0, 2), sha256(film)), 'spoilt');
    const file = join(place.dir, '..', 'tuesday.backup');
    expect(await store.backup(file)).toMatchObject([{ what: 'attachment', where: sha256(film) }]);
    const again = await restored(place, file);
    expect(await again.read(A)).toHaveLength(3);
    expect(await again.verify()).toMatchObject([{ what: 'attachment', where: sha256(film) }]);
  });

  test('a backup that fails leaves the one before it as it was', async () => {
    const { store, file } = await backedUp();
    const before = readFileSync(file);
    await store.append([note(A, 4)]);
    mkdirSync(`${file}.part`);
    await expect(store.backup(file)).rejects.toThrow();
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test.skipIf(name === 'SQLite' && isWithoutPostgres)(
    'moves to the other database: what is restored there is the same',
    async () => {
      const { store, file } = await backedUp();
      const there =
        name === 'SQLite'
          ? { dir: freshFolder(), database: (await postgres?.().freshDatabase()) ?? null }
          : { dir: freshFolder(), database: null };
      await restore(file, there.dir, there.database);
      const moved = await openStore(there.dir, there.database);
      onTestFinished(() => moved.close());
      expect(await moved.verify()).toEqual([]);
      expect(await moved.read(A)).toEqual(await store.read(A));
      expect(await moved.list()).toEqual(await store.list());
      const { position } = await moved.append([note(A, 4)]);
      expect(position).toBeGreaterThan(await store.lastPosition());
    },
  );

  test('refused in words: no such file, something else, cut short, spoilt inside, a folder or database in use', async () => {
    const { place, file } = await backedUp();
    const fresh = () => freshFolder();
    await expect(restore(join(place.dir, 'none'), fresh())).rejects.toThrow(/no such backup/);
    const other = join(fresh(), 'other');
    writeFileSync(other, 'a shopping list');
    await expect(restore(other, fresh())).rejects.toMatchObject({ name: 'InputError' });
    await expect(restore(file, place.dir)).rejects.toThrow(/not empty/);
    if (place.database !== null)
      await expect(restore(file, fresh(), place.database)).rejects.toThrow(/holds records already/);
    const spoilt = join(place.dir, 'spoilt');
    writeFileSync(spoilt, readFileSync(file));
    const database = new DatabaseSync(spoilt);
    database.exec('update attachment_bytes set bytes = zeroblob(120000)');
    database.close();
    await expect(restore(spoilt, fresh())).rejects.toThrow(/hash/);
    truncateSync(file, Math.floor(statSync(file).size / 2));
    const target = fresh();
    await expect(restore(file, target)).rejects.toMatchObject({ name: 'InputError' });
    expect(existsSync(join(target, 'records.sqlite'))).toBe(false);
  });
});

test('a file of records without films is no backup', async () => {
  const dir = freshFolder();
  await (await openStore(dir)).close();
  await expect(restore(join(dir, 'records.sqlite'), freshFolder())).rejects.toThrow(/not a backup/);
});

/** Every event's place, text and hash, as a backup holds them. */
async function rowsOf(store: Store, file: string): Promise<unknown[]> {
  await store.backup(file);
  const database = new DatabaseSync(file);
  const rows = database.prepare('select position, body, hash from events order by position').all();
  database.close();
  return rows.map((row) => ({ ...row }));
}
