/** Reads records: one of them, what changed; and makes what is kept of a case again after it changed shape. */
import { foldCase, readEvent } from '@bonewright/casebook';
import type { Engine } from '../engine.ts';
import { indexCase } from '../search/index-case.ts';
import type { SearchIndex } from '../search/search-index.ts';
import type { Change } from '../store.ts';
import { ROW_VERSION, writeCase } from './case-record.ts';
import { recordedEvent } from './recorded-event.ts';
import type { Database, DatabaseTransaction } from './tables.ts';

interface Readable<R> {
  readonly read: (json: unknown) => R;
}

export async function readRecord<R>(db: Database, { read }: Readable<R>, id: string, after: number): Promise<R[]> {
  return (await readBodies(db, id, after)).map((body) => recordedEvent(body, read));
}

/** The events as they are stored, word for word. */
export async function readBodies(db: Database, id: string, after: number): Promise<string[]> {
  const rows = await db
    .selectFrom('events')
    .select('body')
    .where('case_id', '=', id)
    .where('seq', '>', after)
    .orderBy('seq')
    .execute();
  return rows.map(({ body }) => body);
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

const AT_ONCE = 200;

/**
 * Folds again the cases whose line and words were written by another version: the last changed before this resolves,
 * so that nobody waits for a hundred thousand old ones; the rest one by one, until `signal`.
 */
export async function rebuildRows(
  { db, recording, index }: Engine,
  signal: AbortSignal,
): Promise<{ rest: Promise<void> }> {
  const old = db.selectFrom('cases').select('id').where('row_version', '!=', ROW_VERSION).orderBy('position', 'desc');
  const rebuildSome = async (): Promise<boolean> => {
    const some = await old.limit(AT_ONCE).execute();
    for (const { id } of some) if (!signal.aborted) await recording((tx) => rebuildRow(tx, index, id));
    return some.length === AT_ONCE && !signal.aborted;
  };
  const hasMore = await rebuildSome();
  const rest = async (): Promise<void> => {
    // Each turn leaves the others a chance; what fails here is tried again when the store opens next.
    while (await rebuildSome()) await new Promise((resolve) => setImmediate(resolve));
  };
  return { rest: hasMore ? rest().catch(() => undefined) : Promise.resolve() };
}

async function rebuildRow(tx: DatabaseTransaction, index: SearchIndex, id: string): Promise<void> {
  const head = await tx
    .selectFrom('cases')
    .select(['seq', 'position', 'hash'])
    .where('id', '=', id)
    .where('row_version', '!=', ROW_VERSION)
    .executeTakeFirst();
  if (!head) return;
  const events = await readRecord(tx, { read: readEvent }, id, 0);
  const state = foldCase(events);
  await writeCase(tx, state, head);
  await tx.deleteFrom('search_lines').where('case_id', '=', id).execute();
  await indexCase(tx, index, state, events, { before: head.position, position: head.position });
}

/** Takes out the cases marked as demonstration, and no other. */
export async function removeDemonstration({ recording, announce, index }: Engine): Promise<number> {
  return recording(async (tx) => {
    const marked = tx.selectFrom('cases').select('id').where('is_demonstration', '=', 1);
    await index.forgetDemonstration(tx);
    await tx.deleteFrom('search_lines').where('case_id', 'in', marked).execute();
    await tx.deleteFrom('events').where('case_id', 'in', marked).execute();
    const { numDeletedRows } = await tx.deleteFrom('cases').where('is_demonstration', '=', 1).executeTakeFirst();
    await announce(tx, 'cases');
    return Number(numDeletedRows);
  });
}
