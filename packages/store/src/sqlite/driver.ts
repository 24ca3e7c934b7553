/** SQLite as kysely wants it: prepared statements kept by their text, and transactions that take the write lock at once. */
import type { DatabaseSync } from '@photostructure/sqlite';
import type { SqliteDatabase, SqliteStatement } from 'kysely';
import { diskError } from '../disk-error.ts';

export function forKysely(database: InstanceType<typeof DatabaseSync>): SqliteDatabase {
  const kept = new Map<string, SqliteStatement>();
  const prepare = (text: string): SqliteStatement => {
    const statement = database.prepare(text);
    return {
      reader: statement.columns().length > 0,
      all: (values) => blamingDisk(() => statement.all(...values)),
      run: (values) => blamingDisk(() => statement.run(...values)),
      iterate: (values) => statement.iterate(...values),
    };
  };
  return {
    close: () => {
      // Everything in the one file, so that a copy of it is whole.
      database.exec('pragma wal_checkpoint(truncate)');
      database.close();
    },
    prepare(text) {
      // A transaction that reads first and writes later fails at once, without waiting, if another process wrote between.
      const asked = text === 'begin' ? 'begin immediate' : text;
      const found = kept.get(asked) ?? prepare(asked);
      kept.set(asked, found);
      return found;
    },
  };
}

function blamingDisk<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw diskError(error);
  }
}
