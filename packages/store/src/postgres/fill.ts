/** Fills an empty PostgreSQL database from the SQLite file of a backup, in one transaction: whole or not at all. */
import { InputError } from '@bonewright/fault';
import { sql } from 'kysely';
import type { Engine } from '../engine.ts';
import { insertRows, TABLES } from '../records/all-tables.ts';
import { bringUpToDate } from '../records/schema.ts';
import { indexAgain } from '../search/index-again.ts';
import type { SqliteFile } from '../sqlite/open.ts';

/** Throws InputError where something is recorded in the database already. */
export async function fill({ db, index }: Engine, source: SqliteFile): Promise<void> {
  await bringUpToDate({ db, index });
  await db.transaction().execute(async (tx) => {
    const found = await tx.selectFrom('events').select('position').limit(1).executeTakeFirst();
    if (found) throw new InputError('the database holds records already', '--database', 'restore into an empty one');
    await sql`delete from marks`.execute(tx);
    for (const table of TABLES) await insertRows(tx, table, source.prepare(`select * from ${table}`).iterate());
    await indexAgain(tx, index);
    const next = sql`select setval(pg_get_serial_sequence('events', 'position'), coalesce(max(position), 0) + 1, false) from events`;
    await next.execute(tx);
  });
}
