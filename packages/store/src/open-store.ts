/** A store in a folder: the records in one SQLite file, the attachments beside it. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '@bonewright/fault';
import { Kysely, SqliteDialect } from 'kysely';
import { AttachmentFolder } from './attachments/folder.ts';
import { ATTACHMENTS, RECORDS } from './data-folder.ts';
import { append } from './records/append.ts';
import { inbox } from './records/inbox.ts';
import { isMarked, mark } from './records/marks.ts';
import { changesAfter, lastPosition, listBoard, readCase, rebuildRows, removeDemonstration } from './records/read.ts';
import { RecentFolds } from './records/recent-folds.ts';
import { bringUpToDate } from './records/schema.ts';
import type { Database, Tables } from './records/tables.ts';
import { verifyRecords } from './records/verify-records.ts';
import { writeBackup } from './sqlite/backup.ts';
import { forKysely } from './sqlite/driver.ts';
import { integrityFaults, openSqlite, type SqliteFile, unusable } from './sqlite/open.ts';
import type { Attachment, Damage, Store } from './store.ts';

/** Opens the store in this folder, making both where there is none. Throws InputError where the records cannot be opened. */
export async function openStore(dataDir: string): Promise<Store> {
  mkdirSync(dataDir, { recursive: true });
  const file = openSqlite(join(dataDir, RECORDS));
  try {
    return await storeOn(file, new AttachmentFolder(join(dataDir, ATTACHMENTS)));
  } catch (error) {
    file.close();
    throw unusable(error, join(dataDir, RECORDS));
  }
}

/** Opens the store that is in this folder already. Throws InputError where there is none. */
export async function openExistingStore(dataDir: string): Promise<Store> {
  requireRecords(dataDir);
  return openStore(dataDir);
}

/** What is damaged in this folder, also where the records cannot be opened at all. Throws InputError where there are none. */
export async function verifyFolder(dataDir: string): Promise<Damage[]> {
  requireRecords(dataDir);
  const opened = await openStore(dataDir).catch((error: unknown) => {
    if (error instanceof InputError) return error;
    throw error;
  });
  if (opened instanceof InputError) return [{ what: 'database', where: RECORDS, because: opened.what }];
  return opened.verify().finally(() => opened.close());
}

function requireRecords(dataDir: string): void {
  if (!existsSync(join(dataDir, RECORDS)))
    throw new InputError('there are no records in this folder', dataDir, 'name the folder that the server uses');
}

/** A store on an open file and folder. */
export async function storeOn(file: SqliteFile, folder: AttachmentFolder): Promise<Store> {
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: forKysely(file) }) });
  await bringUpToDate(db);
  await folder.open(Date.now());
  await rebuildRows(db);
  const folds = new RecentFolds();
  const now = () => new Date().toISOString();
  return {
    append: (events) => append(db, events, now(), folds),
    read: (caseId, after = 0) => readCase(db, caseId, after),
    list: () => listBoard(db),
    changesAfter: (position, limit) => changesAfter(db, position, limit),
    lastPosition: () => lastPosition(db),
    async putAttachment(bytes, options) {
      const kept = await folder.put(bytes, options);
      await noteAttachment(db, kept, now());
      return kept;
    },
    async getAttachment(sha256) {
      const found = await findAttachment(db, sha256);
      return found && { ...found, bytes: await folder.read(found) };
    },
    inbox: inbox(db, now),
    removeDemonstration: () => removeDemonstration(db),
    mark: (name) => mark(db, name, now()),
    isMarked: (name) => isMarked(db, name),
    verify: () => verify(file, db, folder),
    backup: (to) => writeBackup(file, folder, to),
    close: () => db.destroy(),
  };
}

async function noteAttachment(db: Database, { sha256, byteLength }: Attachment, at: string): Promise<void> {
  await db
    .insertInto('attachments')
    .values({ sha256, byte_length: byteLength, received_at: at })
    .onConflict((c) => c.doNothing())
    .execute();
}

async function findAttachment(db: Database, sha256: string): Promise<Attachment | null> {
  const row = await db.selectFrom('attachments').selectAll().where('sha256', '=', sha256).executeTakeFirst();
  return row ? { sha256, byteLength: row.byte_length } : null;
}

async function verify(file: SqliteFile, db: Database, folder: AttachmentFolder): Promise<Damage[]> {
  const inFile = integrityFaults(file).map((because) => ({ what: 'database', where: RECORDS, because }) as const);
  // In a file whose pages are damaged the records cannot even be listed.
  if (inFile.length > 0) return inFile;
  const { damage, named } = await verifyRecords(db);
  for (const { sha256 } of await db.selectFrom('attachments').select('sha256').execute()) named.add(sha256);
  for (const sha256 of named) {
    const because = await folder.faultOf(sha256);
    if (because) damage.push({ what: 'attachment', where: sha256, because });
  }
  return damage;
}
