/** The board: a line a case, as it was folded when the case last changed. */
import type { BoardRow } from '@bonewright/casebook';
import type { BoardPage, BoardWanted } from '../store.ts';
import type { Database } from './tables.ts';

export async function listBoard(db: Database): Promise<BoardRow[]> {
  const rows = await db.selectFrom('cases').select('row').orderBy('position', 'desc').execute();
  return rows.map(({ row }): BoardRow => JSON.parse(row));
}

export async function boardPage(db: Database, { ended, before, limit, only }: BoardWanted): Promise<BoardPage> {
  // PostgreSQL knows no empty list.
  if (only?.length === 0) return { rows: [], more: null, live: 0, ended: 0 };
  const found = await db
    .selectFrom('cases')
    .select(['row', 'position'])
    .where('ended', '=', ended ? 1 : 0)
    .$if(only !== null, (q) => q.where('id', 'in', only ?? []))
    .where('position', '<', before ?? Number.MAX_SAFE_INTEGER)
    .orderBy('position', 'desc')
    .limit(limit + 1)
    .execute();
  const shown = found.slice(0, limit);
  const more = found.length > limit ? (shown.at(-1)?.position ?? null) : null;
  return { rows: shown.map(({ row }): BoardRow => JSON.parse(row)), more, ...(await counts(db, only)) };
}

async function counts(db: Database, only: readonly string[] | null): Promise<{ live: number; ended: number }> {
  const found = await db
    .selectFrom('cases')
    .select(['ended', (e) => e.fn.countAll<number>().as('count')])
    .$if(only !== null, (q) => q.where('id', 'in', only ?? []))
    .groupBy('ended')
    .execute();
  const of = (ended: number): number => found.find((row) => row.ended === ended)?.count ?? 0;
  return { live: of(0), ended: of(1) };
}

const MOST_NUMBERS = 50;

/** The last numbers that begin so: the longest, and of those the greatest. */
export async function numbersBeginning(db: Database, start: string): Promise<string[]> {
  const found = await db
    .selectFrom('cases')
    .select('number')
    .where('number', '>=', start)
    .where('number', '<', `${start}\uffff`)
    .orderBy((e) => e.fn('length', ['number']), 'desc')
    .orderBy('number', 'desc')
    .limit(MOST_NUMBERS)
    .execute();
  return found.map(({ number }) => number);
}
