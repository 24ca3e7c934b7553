/** What happens when the disk or the process fails at the worst moment: what was acknowledged stays, the rest leaves no trace. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { readdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import * as files from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { DatabaseSync } from '@photostructure/sqlite';
import { describe, expect, test } from 'vitest';
import { AttachmentFolder, type Disk } from './attachments/folder.ts';
import { DiskError, openExistingStore, openStore, verifyFolder } from './index.ts';
import { storeOn } from './open-store.ts';
import { sqliteEngine } from './sqlite/engine.ts';
import { openSqlite, type SqliteFile } from './sqlite/open.ts';
import { chunks, filmAdded, freshFolder, note, opened, sha256, someBytes } from './test/cases.ts';

const A = 'case-aaaa';
const film = someBytes(50_000);

describe('the disk fails at the n-th write', () => {
  test('of the records: the events are refused whole, the record is intact, and the next try succeeds', async () => {
    const dir = freshFolder();
    const file = openSqlite(join(dir, 'records.sqlite'));
    const failing = new FailingSqlite(file);
    const store = await storeOn(sqliteEngine(failing.file), new AttachmentFolder(join(dir, 'attachments')));
    await store.append([opened(A)]);
    let n = 1;
    for (; ; n++) {
      failing.failAt(n);
      const events = [note(A, 2), note(A, 3), note(A, 4)];
      const refused = await store.append(events).then(
        () => null,
        (error: unknown) => error,
      );
      failing.failAt(0);
      expect(await store.verify()).toEqual([]);
      const recorded = (await store.read(A)).length;
      if (refused === null) break;
      expect(recorded).toBe(1);
      expect(refused).toBeInstanceOf(DiskError);
    }
    expect(n).toBeGreaterThan(6);
    expect(await store.read(A)).toHaveLength(4);
    await store.close();
  });

  test.each(['open', 'write', 'sync', 'rename', 'mkdir'] as const)(
    'of an attachment, at its %s: no file under that hash, nothing left behind, and the next try succeeds',
    async (step) => {
      const dir = freshFolder();
      await new AttachmentFolder(join(dir, 'attachments')).open(0);
      const folder = new AttachmentFolder(join(dir, 'attachments'), failingDisk(step));
      await expect(folder.put(chunks(film))).rejects.toThrow(new DiskError('the disk is full'));
      expect(allFiles(dir)).toEqual([]);
      const mended = new AttachmentFolder(join(dir, 'attachments'));
      await mended.put(chunks(film));
      expect(await mended.faultOf(sha256(film))).toBeNull();
    },
  );

  test('a full database (its real limit on pages): refused in words, record intact, goes on with room', async () => {
    const dir = freshFolder();
    const file = openSqlite(join(dir, 'records.sqlite'));
    const store = await storeOn(sqliteEngine(file), new AttachmentFolder(join(dir, 'attachments')));
    await store.append([opened(A)]);
    const pages = Number(file.prepare('pragma page_count').get().page_count);
    file.exec(`pragma max_page_count = ${pages + 2}`);
    const long = note(A, 2, 'x'.repeat(20_000));
    await expect(store.append([long])).rejects.toThrow(new DiskError('the disk is full'));
    expect(await store.read(A)).toHaveLength(1);
    expect(await store.verify()).toEqual([]);
    file.exec(`pragma max_page_count = ${pages + 1000}`);
    expect(await store.append([long])).toMatchObject({ added: 1 });
    await store.close();
  });
});

test('two servers write to the same records at once: none is turned away, every acknowledged event is there', async () => {
  const dir = freshFolder();
  await (await openStore(dir)).close();
  const said = await Promise.all([runUntilKilled(dir, 400, A), runUntilKilled(dir, 400, 'case-bbbb')]);
  const store = await openStore(dir);
  for (const [i, caseId] of [A, 'case-bbbb'].entries())
    expect((await store.read(caseId)).length).toBeGreaterThanOrEqual(said[i] ?? 0);
  expect(Math.min(...said)).toBeGreaterThan(0);
  expect(await store.verify()).toEqual([]);
  await store.close();
});

test('killed (SIGKILL) again and again while writing: no acknowledged event is missing, verify is clean each time', async () => {
  const dir = freshFolder();
  let acknowledged = 0;
  for (let kill = 0; kill < 4; kill++) {
    const said = await runUntilKilled(dir, 5 + kill * 29);
    acknowledged = Math.max(acknowledged, said);
    const store = await openStore(dir);
    const events = await store.read(A);
    expect(events.length).toBeGreaterThanOrEqual(acknowledged);
    expect(await store.verify()).toEqual([]);
    await store.close();
  }
  expect(acknowledged).toBeGreaterThan(0);
});

describe('verify names what is damaged', () => {
  async function damaged(spoil: (dir: string) => void) {
    const dir = freshFolder();
    const store = await openStore(dir);
    await store.putAttachment(chunks(film));
    await store.append([opened(A), filmAdded(A, 2, film), note(A, 3), note(A, 4)]);
    await store.close();
    spoil(dir);
    const again = await openStore(dir);
    const damage = await again.verify();
    await again.close();
    return damage;
  }
  const inDatabase = (sql: string) => (dir: string) => {
    const database = new DatabaseSync(join(dir, 'records.sqlite'));
    database.exec(sql);
    database.close();
  };
  const attachment = (dir: string) => join(dir, 'attachments', sha256(film).slice(0, 2), sha256(film));

  test.each([
    [
      'a note reworded in the database',
      inDatabase(`update events set body = replace(body, 'note 3', 'note 9')`),
      'record',
      `case ${A} event 3`,
    ],
    ['a note taken out', inDatabase('delete from events where seq = 3'), 'record', `case ${A} event 4`],
    ['the last note taken out', inDatabase('delete from events where seq = 4'), 'record', `case ${A}`],
    ['the whole case taken out', inDatabase('delete from events'), 'record', `case ${A}`],
    ['the case’s line taken out', inDatabase('delete from cases'), 'record', `case ${A}`],
    ['a byte of a film changed', (dir: string) => spoilByte(attachment(dir)), 'attachment', sha256(film)],
    ['a film cut short', (dir: string) => truncateSync(attachment(dir), 100), 'attachment', sha256(film)],
    ['a film lost', (dir: string) => rmSync(attachment(dir)), 'attachment', sha256(film)],
    [
      'a film lost with its line',
      (dir: string) => {
        rmSync(attachment(dir));
        inDatabase('delete from attachments')(dir);
      },
      'attachment',
      sha256(film),
    ],
  ] as const)('%s', async (_, spoil, what, where) => {
    expect(await damaged(spoil)).toContainEqual(expect.objectContaining({ what, where }));
  });

  test('nothing, where nothing is', async () => {
    expect(await damaged(() => undefined)).toEqual([]);
  });
});

test('a file that is no database is refused in words, not replaced', async () => {
  const dir = freshFolder();
  const path = join(dir, 'records.sqlite');
  writeFileSync(path, 'this is a shopping list, not a database. '.repeat(100));
  await expect(openStore(dir)).rejects.toMatchObject({ name: 'InputError', path });
  expect(readFileSync(path, 'utf8')).toContain('shopping list');
});

test.each([0.001, 0.1, 0.5, 0.9])(
  'a database cut short at %f of its length: verify says so, whether or not it still opens',
  async (share) => {
    const dir = freshFolder();
    const store = await openStore(dir);
    await store.append([opened(A)]);
    for (let seq = 2; seq < 40; seq++) await store.append([note(A, seq, 'x'.repeat(3000))]);
    await store.close();
    const path = join(dir, 'records.sqlite');
    truncateSync(path, Math.floor(statSync(path).size * share));
    expect(await verifyFolder(dir)).toContainEqual(expect.objectContaining({ what: 'database' }));
  },
);

test('a folder without records is refused where records must be, and stays as it was', async () => {
  const dir = freshFolder();
  await expect(openExistingStore(dir)).rejects.toThrow(/no records/);
  await expect(verifyFolder(dir)).rejects.toThrow(/no records/);
  expect(readdirSync(dir)).toEqual([]);
  await (await openStore(dir)).close();
  await (await openExistingStore(dir)).close();
});

test('an upload cut short by a crash is cleared a day later, a running one is left alone', async () => {
  const dir = freshFolder();
  const folder = new AttachmentFolder(join(dir, 'attachments'));
  await folder.open(Date.now());
  writeFileSync(join(dir, 'attachments', 'incoming', 'half.part'), 'half');
  await folder.open(Date.now());
  expect(allFiles(dir)).toEqual(['half.part']);
  await folder.open(Date.now() + 25 * 60 * 60 * 1000);
  expect(allFiles(dir)).toEqual([]);
});

/** A database whose n-th statement from now on fails as a broken disk would. */
class FailingSqlite {
  readonly file: SqliteFile;
  #left = 0;

  constructor(file: SqliteFile) {
    this.file = new Proxy(file, {
      get: (target, key) => {
        const value: unknown = Reflect.get(target, key);
        if (key === 'prepare') return (sql: string) => this.#failing(target.prepare(sql));
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
  }

  failAt(n: number): void {
    this.#left = n;
  }

  #failing(statement: ReturnType<SqliteFile['prepare']>) {
    return new Proxy(statement, {
      get: (target, key) => {
        const value: unknown = Reflect.get(target, key);
        if (typeof value !== 'function') return value;
        if (key !== 'run' && key !== 'all') return value.bind(target);
        return (...values: unknown[]) => {
          if (this.#left > 0 && --this.#left === 0 && target.sourceSQL !== 'rollback')
            throw new Error('disk I/O error');
          return value.apply(target, values);
        };
      },
    });
  }
}

function failingDisk(step: 'open' | 'write' | 'sync' | 'rename' | 'mkdir'): Disk {
  const full = () => Promise.reject(Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' }));
  const open: Disk['open'] = async (path, flags) => {
    if (step === 'open') return full();
    const handle = await files.open(path, flags);
    if (step === 'write') handle.writeFile = full;
    if (step === 'sync') handle.sync = full;
    return handle;
  };
  const fails = { rename: full, mkdir: full };
  const failing = step === 'rename' || step === 'mkdir' ? { [step]: fails[step] } : {};
  return { ...files, open, ...failing };
}

function allFiles(dir: string): string[] {
  return readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => entry.name);
}

function spoilByte(path: string): void {
  const bytes = readFileSync(path);
  bytes[1000] = (bytes[1000] ?? 0) ^ 1;
  expect(createHash('sha256').update(bytes).digest('hex')).not.toBe(sha256(film));
  writeFileSync(path, bytes);
}

/** Runs a writer until `afterMs` past its first acknowledgement; the last number it acknowledged. Throws what it said went wrong. */
async function runUntilKilled(dir: string, afterMs: number, caseId = A): Promise<number> {
  const program = fileURLToPath(new URL('./test/endless-writer.ts', import.meta.url));
  const writer = spawn(process.execPath, ['--import', 'tsx', program, dir, caseId]);
  const ended = once(writer, 'exit');
  let said = '';
  let complained = '';
  writer.stdout.on('data', (chunk: Buffer) => {
    said += chunk;
  });
  writer.stderr.on('data', (chunk: Buffer) => {
    complained += chunk;
  });
  await Promise.race([once(writer.stdout, 'data'), ended]);
  await Promise.race([setTimeout(afterMs), ended]);
  writer.kill('SIGKILL');
  await ended;
  if (complained) throw new Error(complained);
  return Number(said.slice(0, said.lastIndexOf('\n')).split('\n').at(-1) ?? 0);
}
