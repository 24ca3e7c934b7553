/** A backup is one SQLite file: the records, and beside them a table with the bytes of every attachment. */
import { open, readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { backup } from '@photostructure/sqlite';
import type { AttachmentFolder } from '../attachments/folder.ts';
import { diskError } from '../disk-error.ts';
import type { Damage } from '../store.ts';
import { openSqlite, type SqliteFile } from './open.ts';

/** Writes the backup under a passing name and renames it when it is whole and flushed. The source may be in use. */
export async function writeBackup(source: SqliteFile, attachments: AttachmentFolder, to: string): Promise<Damage[]> {
  const passing = `${to}.part`;
  await removeDatabase(passing);
  try {
    await backup(source, passing);
    const damage = await takeIn(attachments, passing);
    await flush(passing);
    await rename(passing, to);
    await flush(dirname(to));
    return damage;
  } catch (error) {
    await removeDatabase(passing);
    throw diskError(error);
  }
}

async function takeIn(attachments: AttachmentFolder, passing: string): Promise<Damage[]> {
  const copy = openSqlite(passing);
  try {
    copy.exec('create table attachment_bytes (sha256 text primary key, bytes blob not null)');
    const insert = copy.prepare('insert into attachment_bytes values (?, ?)');
    const damage: Damage[] = [];
    for (const { sha256 } of copy.prepare('select sha256 from attachments').all()) {
      const because = await attachments.faultOf(sha256);
      if (because) damage.push({ what: 'attachment', where: sha256, because });
      else insert.run(sha256, await readFile(attachments.pathOf(sha256)));
    }
    copy.exec('pragma journal_mode = delete');
    return damage;
  } finally {
    copy.close();
  }
}

async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r');
  await handle.sync().finally(() => handle.close());
}

async function removeDatabase(path: string): Promise<void> {
  for (const end of ['', '-wal', '-shm', '-journal']) await rm(path + end, { force: true });
}
