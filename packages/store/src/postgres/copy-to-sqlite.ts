/** The records of a PostgreSQL database as of one moment, in a new SQLite file: what a backup is on either. */
import { sql } from 'kysely';
import { insertRows, type Row, TABLES } from '../records/all-tables.ts';
import { bringUpToDate } from '../records/schema.ts';
import type { Database, DatabaseTransaction } from '../records/tables.ts';
import { indexAgain } from '../search/index-again.ts';
import { sqliteEngine } from '../sqlite/engine.ts';
import { openSqliteAlone } from '../sqlite/open.ts';

const PAGE = 2000;

export async function copyToSqlite(db: Database, path: string): Promise<void> {
  const engine = sqliteEngine(openSqliteAlone(path));
  const copy = engine.db;
  try {
    await bringUpToDate(engine);
    await db
      .transaction()
      .setIsolationLevel('repeatable read')
      .setAccessMode('read only')
      .execute(async (tx) => {
        for (const table of TABLES)
          for await (const rows of pagesOf(tx, table))
            await copy.transaction().execute((to) => insertRows(to, table, rows));
      });
    await copy.transaction().execute((to) => indexAgain(to, engine.index));
  } finally {
    await copy.destroy();
  }
}

async function* pagesOf(tx: DatabaseTransaction, table: string): AsyncGenerator<Row[]> {
  await sql`declare rows no scroll cursor for select * from ${sql.table(table)}`.execute(tx);
  while (true) {
    const { rows } = await sql<Row>`fetch ${sql.lit(PAGE)} from rows`.execute(tx);
    if (rows.length === 0) break;
    yield rows;
  }
  await sql`close rows`.execute(tx);
}
