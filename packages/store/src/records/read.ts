/** Reads records: one of them, the board, what changed; and makes the board's lines again after they changed shape. */
import { type BoardRow, foldCase } from '@bonewright/casebook';
import type { Engine } from '../engine.ts';
import type { Change } from '../store.ts';
import { caseRecord, ROW_VERSION, writeCase } from './case-record.ts';
import { recordedEvent } from './recorded-event.ts';
import type { Database } from './tables.ts';

interface Readable<R> {
  readonly read: (json: unknown) => R;
}

export async function readRecord<R>(db: Database, { read }: Readable<R>, id: string, after: number): Promise<R[]> {
  const rows = await db
    .selectFrom('events')
    .select('body')
    .where('case_id', '=', id)
    .where('seq', '>', after)
    .orderBy('seq')
    .execute();
  return rows.map(({ body }) => recordedEvent(body, read));
}

export async function listBoard(db: Database): Promise<BoardRow[]> {
  const rows = await db.selectFrom('cases').select('row').orderBy('position', 'desc').execute();
  return rows.map(({ row }): BoardRow => JSON.parse(row));
}

export async function changesAfter(db: Database, position: number, limit: number): Promise<Change[]> {
  const rows = await db
    .selectFrom('events')
    .select(['position', 'case_id', 'seq'])
    .where('position', '>', position)
    .orderBy('position')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ position: row.position, caseId: row.case_id, seq: row.seq }));
}

export async function lastPosition(db: Database): Promise<number> {
  const row = await db.selectFrom('events').select('position').orderBy('position', 'desc').limit(1).executeTakeFirst();
  return row?.position ?? 0;
}

/** Folds again the cases whose line was written by another version. */
export async function rebuildRows(db: Database): Promise<void> {
  const old = await db
    .selectFrom('cases')
    .select(['id', 'seq', 'position', 'hash'])
    .where('row_version', '!=', ROW_VERSION)
    .execute();
  for (const { id, ...head } of old) {
    const state = foldCase(await readRecord(db, caseRecord, id, 0));
    await db.transaction().execute((tx) => writeCase(tx, state, head));
  }
}

/** Takes out the cases marked as demonstration, and no other. */
export async function removeDemonstration({ recording, announce }: Engine): Promise<number> {
  return recording(async (tx) => {
    const marked = tx.selectFrom('cases').select('id').where('is_demonstration', '=', 1);
    await tx.deleteFrom('events').where('case_id', 'in', marked).execute();
    const { numDeletedRows } = await tx.deleteFrom('cases').where('is_demonstration', '=', 1).executeTakeFirst();
    await announce(tx, 'cases');
    return Number(numDeletedRows);
  });
}
