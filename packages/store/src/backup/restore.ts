/** Makes a data folder from a backup: attachments first, the database last, so that half a restore is no store at all. */
import { existsSync } from 'node:fs';
import { copyFile, mkdir, readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { InputError } from '@bonewright/fault';
import { AttachmentFolder } from '../attachments/folder.ts';
import { ATTACHMENTS, RECORDS } from '../data-folder.ts';
import { postgresEngine } from '../postgres/engine.ts';
import { fill } from '../postgres/fill.ts';
import { bringUpToDate } from '../records/schema.ts';
import { sqliteEngine } from '../sqlite/engine.ts';
import { integrityFaults, openSqliteAlone, openSqliteToRead, type SqliteFile } from '../sqlite/open.ts';
import { flush } from './flush.ts';

/**
 * Restores a backup into a new or empty folder, or its attachments there and its records into an empty PostgreSQL
 * database. Throws InputError where either is in use or the backup is damaged.
 */
export async function restore(backupFile: string, dataDir: string, database: string | null = null): Promise<void> {
  if (!existsSync(backupFile)) throw new InputError('there is no such backup', backupFile, 'check the path');
  await requireEmpty(dataDir);
  const source = openSqliteToRead(backupFile);
  try {
    requireSound(source, backupFile);
    await restoreAttachments(source, join(dataDir, ATTACHMENTS));
  } finally {
    source.close();
  }
  const passing = join(dataDir, `${RECORDS}.part`);
  await copyFile(backupFile, passing);
  const copy = openSqliteAlone(passing);
  copy.exec('drop table attachment_bytes; vacuum');
  copy.close();
  if (database === null) {
    await flush(passing);
    await rename(passing, join(dataDir, RECORDS));
    return flush(dataDir);
  }
  await fillDatabase(passing, database).finally(() => rm(passing));
}

async function fillDatabase(records: string, address: string): Promise<void> {
  const engine = await postgresEngine(address);
  const file = openSqliteAlone(records);
  const source = sqliteEngine(file);
  try {
    // A backup of an earlier version is brought to the tables of this one first.
    await bringUpToDate(source);
    await fill(engine, file);
  } finally {
    await source.close();
    await engine.close();
  }
}

async function requireEmpty(dir: string): Promise<void> {
  await mkdir(dir, { recursive: true });
  const inside = await readdir(dir);
  if (inside.length > 0) throw new InputError('the folder is not empty', dir, 'restore into a new one');
}

function requireSound(source: SqliteFile, path: string): void {
  const [fault] = integrityFaults(source);
  if (fault) throw new InputError(`the backup is damaged: ${fault}`, path, 'take another backup');
  const tables = source.prepare("select name from sqlite_schema where name in ('events', 'attachment_bytes')").all();
  if (tables.length < 2) throw new InputError('this is not a backup of Bonewright', path, 'take another file');
}

async function restoreAttachments(source: SqliteFile, dir: string): Promise<void> {
  const folder = new AttachmentFolder(dir);
  await folder.open(0);
  const bytesOf = source.prepare('select bytes from attachment_bytes where sha256 = ?');
  for (const { sha256 } of source.prepare('select sha256 from attachment_bytes order by sha256').all()) {
    const { bytes } = bytesOf.get(sha256);
    await folder.put(once(bytes), { expectedSha256: sha256 });
  }
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
