/** Every table but the index of words, in an order in which they can be filled; and rows carried between databases. */
import { sql } from 'kysely';
import type { Database, Tables } from './tables.ts';

const ORDER: Record<keyof Tables, number> = {
  attachments: 1,
  events: 2,
  cases: 3,
  received_films: 4,
  marks: 5,
  practice: 6,
  ...{ people: 7, links: 8, sessions: 9, tries: 10, access_log: 11 },
  search_lines: 12,
};

export const TABLES: readonly string[] = Object.entries(ORDER)
  .sort(([, a], [, b]) => a - b)
  .map(([table]) => table);

export type Row = Readonly<Record<string, unknown>>;

const MOST_AT_ONCE = 500;

/** Adds rows as they are; `table` is one of TABLES. */
export async function insertRows(db: Database, table: string, rows: Iterable<Row>): Promise<void> {
  let held: Row[] = [];
  for (const row of rows) {
    held.push(row);
    if (held.length < MOST_AT_ONCE) continue;
    await insertSome(db, table, held);
    held = [];
  }
  await insertSome(db, table, held);
}

async function insertSome(db: Database, table: string, rows: readonly Row[]): Promise<void> {
  const [first] = rows;
  if (!first) return;
  const columns = Object.keys(first);
  const values = rows.map((row) => sql`(${sql.join(columns.map((column) => row[column]))})`);
  const names = sql.join(columns.map((column) => sql.ref(column)));
  await sql`insert into ${sql.table(table)} (${names}) values ${sql.join(values)}`.execute(db);
}
