/** SQLite below a store: one file, one server. */
import { backup } from '@photostructure/sqlite';
import { Kysely, SqliteDialect } from 'kysely';
import { type Engine, Watchers } from '../engine.ts';
import type { Tables } from '../records/tables.ts';
import { forKysely } from './driver.ts';
import { ftsIndex } from './fts-index.ts';
import { integrityFaults, type SqliteFile } from './open.ts';

export function sqliteEngine(file: SqliteFile): Engine {
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: forKysely(file) }) });
  const watchers = new Watchers();
  return {
    db,
    index: ftsIndex,
    // The driver takes the write lock when a transaction begins.
    recording: (work) => db.transaction().execute(work),
    async announce(_, news) {
      // A transaction is over before the next turn of the loop, and only this server reads the file.
      setImmediate(() => watchers.tell(news));
    },
    watch: watchers.watch,
    faults: async () => integrityFaults(file),
    async copyTo(path) {
      await backup(file, path);
    },
    close: () => db.destroy(),
  };
}
