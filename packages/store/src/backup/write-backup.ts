/** A backup is one SQLite file, whatever the database: the records, and beside them the bytes of every attachment. */
import { readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { AttachmentFolder } from '../attachments/folder.ts';
import { diskError } from '../disk-error.ts';
import type { Engine } from '../engine.ts';
import { openSqliteAlone } from '../sqlite/open.ts';
import type { Damage } from '../store.ts';
import { flush } from './flush.ts';

/** Writes the backup under a passing name and renames it when it is whole and flushed. The source may be in use. */
export async function writeBackup(source: Engine, attachments: AttachmentFolder, to: string): Promise<Damage[]> {
  const passing = `${to}.part`;
  await removeDatabase(passing);
  try {
    await source.copyTo(passing);
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
  const copy = openSqliteAlone(passing);
  try {
    copy.exec('create table attachment_bytes (sha256 text primary key, bytes blob not null)');
    const insert = copy.prepare('insert into attachment_bytes values (?, ?)');
    const damage: Damage[] = [];
    for (const { sha256 } of copy.prepare('select sha256 from attachments').all()) {
      const because = await attachments.faultOf(sha256);
      if (because) damage.push({ what: 'attachment', where: sha256, because });
      else insert.run(sha256, await readFile(attachments.pathOf(sha256)));
    }
    return damage;
  } finally {
    copy.close();
  }
}

async function removeDatabase(path: string): Promise<void> {
  for (const end of ['', '-wal', '-shm', '-journal']) await rm(path + end, { force: true });
}
