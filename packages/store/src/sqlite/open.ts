/** One SQLite file: every commit is flushed to disk before it returns. */

import { InputError } from '@bonewright/fault';
import { DatabaseSync } from '@photostructure/sqlite';

export type SqliteFile = InstanceType<typeof DatabaseSync>;

const WAIT_FOR_OTHERS_MS = 5000;

/** Opens or makes the file for reading and writing. Throws InputError where it is no database or cannot be written. */
export function openSqlite(path: string): SqliteFile {
  return refusingInWords(path, () => {
    const file = new DatabaseSync(path, { timeout: WAIT_FOR_OTHERS_MS });
    file.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on');
    return file;
  });
}

/** Opens or makes a file that nobody else uses yet: one file without others beside it, flushed by whoever made it. */
export function openSqliteAlone(path: string): SqliteFile {
  return refusingInWords(path, () => {
    const file = new DatabaseSync(path);
    file.exec('pragma journal_mode = delete; pragma synchronous = off; pragma foreign_keys = on');
    return file;
  });
}

/** Opens the file for reading only. Throws InputError where it is no database. */
export function openSqliteToRead(path: string): SqliteFile {
  return refusingInWords(path, () => {
    const file = new DatabaseSync(path, { readOnly: true, timeout: WAIT_FOR_OTHERS_MS });
    file.prepare('select count(*) from sqlite_schema').get();
    return file;
  });
}

/** What SQLite itself finds wrong with the file; empty where it is sound. */
export function integrityFaults(file: SqliteFile): string[] {
  try {
    const rows = file.prepare('pragma integrity_check').all();
    return rows.map((row) => String(Object.values(row)[0])).filter((line) => line !== 'ok');
  } catch (error) {
    return [String(error)];
  }
}

/** The error in words for the user, where the file itself is at fault; another error as it is. */
export function unusable(error: unknown, path: string): unknown {
  const why = error instanceof Error ? error.message : String(error);
  if (!/malformed|not a database|unable to open|readonly/.test(why)) return error;
  return new InputError(`the records cannot be opened: ${why}`, path, 'check the file, or restore a backup');
}

function refusingInWords(path: string, open: () => SqliteFile): SqliteFile {
  try {
    return open();
  } catch (error) {
    throw unusable(error, path);
  }
}
