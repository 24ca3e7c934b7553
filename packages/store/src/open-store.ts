/** A store: the records in one SQLite file or a PostgreSQL database, the attachments in a folder. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type CaseState, PRACTICE } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { AttachmentFolder } from './attachments/folder.ts';
import { writeBackup } from './backup/write-backup.ts';
import { ATTACHMENTS, RECORDS } from './data-folder.ts';
import type { Engine } from './engine.ts';
import { access } from './people/access.ts';
import { people } from './people/people.ts';
import { sessions } from './people/sessions.ts';
import { postgresEngine } from './postgres/engine.ts';
import { append } from './records/append.ts';
import { boardPage, listBoard, numbersBeginning } from './records/board.ts';
import { caseRecord } from './records/case-record.ts';
import { inbox } from './records/inbox.ts';
import { isMarked, mark } from './records/marks.ts';
import { practiceRecord } from './records/practice-record.ts';
import {
  changesAfter,
  lastPosition,
  readBodies,
  readRecord,
  rebuildRows,
  removeDemonstration,
} from './records/read.ts';
import { RecentFolds } from './records/recent-folds.ts';
import { bringUpToDate } from './records/schema.ts';
import type { Database } from './records/tables.ts';
import { verifyRecords } from './records/verify-records.ts';
import { findCases } from './search/find-cases.ts';
import { sqliteEngine } from './sqlite/engine.ts';
import { openSqlite, unusable } from './sqlite/open.ts';
import type { Attachment, Damage, Store } from './store.ts';

/**
 * Opens the store in this folder, making both where there is none. With the address of a PostgreSQL database the records
 * are there and only the attachments in the folder. Throws InputError where the records cannot be opened.
 */
export async function openStore(dataDir: string, database: string | null = null): Promise<Store> {
  mkdirSync(dataDir, { recursive: true });
  const path = database === null ? join(dataDir, RECORDS) : '--database';
  const engine = database === null ? sqliteEngine(openSqlite(path)) : await postgresEngine(database);
  try {
    return await storeOn(engine, new AttachmentFolder(join(dataDir, ATTACHMENTS)));
  } catch (error) {
    await engine.close();
    throw unusable(error, path);
  }
}

/** Opens the store that is there already. Throws InputError where there is none. */
export async function openExistingStore(dataDir: string, database: string | null = null): Promise<Store> {
  if (database === null) requireRecords(dataDir);
  return openStore(dataDir, database);
}

/** What is damaged here, also where the records cannot be opened at all. Throws InputError where there are none. */
export async function verifyFolder(dataDir: string, database: string | null = null): Promise<Damage[]> {
  if (database !== null) return openStore(dataDir, database).then(verified);
  requireRecords(dataDir);
  const opened = await openStore(dataDir).catch((error: unknown) => {
    if (error instanceof InputError) return error;
    throw error;
  });
  if (opened instanceof InputError) return [{ what: 'database', where: RECORDS, because: opened.what }];
  return verified(opened);
}

const verified = (store: Store): Promise<Damage[]> => store.verify().finally(() => store.close());

function requireRecords(dataDir: string): void {
  if (!existsSync(join(dataDir, RECORDS)))
    throw new InputError('there are no records in this folder', dataDir, 'name the folder that the server uses');
}

/** A store on an open database and folder. `clock` says the time. */
export async function storeOn(
  engine: Engine,
  folder: AttachmentFolder,
  clock: () => Date = () => new Date(),
): Promise<Store> {
  const { db } = engine;
  await bringUpToDate(engine);
  await folder.open(clock().getTime());
  const closing = new AbortController();
  const { rest } = await rebuildRows(engine, closing.signal);
  const folds = new RecentFolds<CaseState>();
  const cases = caseRecord(engine.index);
  const now = () => clock().toISOString();
  return {
    append: (events) => append(engine, cases, events, now(), folds),
    read: async (caseId, after = 0) => (caseId === PRACTICE ? [] : readRecord(db, cases, caseId, after)),
    readText: async (caseId, after = 0) => (caseId === PRACTICE ? [] : readBodies(db, caseId, after)),
    list: () => listBoard(db),
    board: (wanted) => boardPage(db, wanted),
    numbersBeginning: (start) => numbersBeginning(db, start),
    search: (question, limit, only) => findCases(engine, question, limit, only),
    changesAfter: (position, limit) => changesAfter(db, position, limit),
    watch: engine.watch,
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
    practice: practiceRecord(engine, now),
    inbox: inbox(engine, now),
    people: { ...people(engine), ...sessions(engine), ...access(engine) },
    removeDemonstration: () => removeDemonstration(engine),
    mark: (name) => mark(db, name, now()),
    isMarked: (name) => isMarked(db, name),
    verify: () => verify(engine, folder),
    backup: (to) => writeBackup(engine, folder, to),
    async close() {
      closing.abort();
      await rest;
      await engine.close();
    },
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

async function verify({ db, faults }: Engine, folder: AttachmentFolder): Promise<Damage[]> {
  const inFile = (await faults()).map((because) => ({ what: 'database', where: RECORDS, because }) as const);
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
