/** Tries that failed, and the log of who came and what was refused. */
import type { Engine } from '../engine.ts';
import type { PeopleStore } from './people-store.ts';

export function access(engine: Engine): Pick<PeopleStore, 'countTry' | 'forgiveTries' | 'note' | 'log'> {
  const { db } = engine;
  return {
    countTry: (key, at, waitUntil) => countTry(engine, key, at, waitUntil),
    async forgiveTries(key, which) {
      if (which === 'all') await db.deleteFrom('tries').where('key', '=', key).execute();
      else
        await db
          .updateTable('tries')
          .set((e) => ({ failures: e('failures', '-', 1) }))
          .where('key', '=', key)
          .where('failures', '>', 0)
          .execute();
    },
    async note(entry) {
      await db.insertInto('access_log').values(entry).execute();
    },
    async log(limit, before) {
      const newest = db.selectFrom('access_log').selectAll().orderBy('id', 'desc').limit(limit);
      const rows = await (before === null ? newest : newest.where('id', '<', before)).execute();
      return rows.map((row) => ({ ...row }));
    },
  };
}

async function countTry(
  { recording }: Engine,
  key: string,
  at: string,
  waitUntil: (failures: number, lastAt: string) => string,
): Promise<string | null> {
  return recording(async (tx) => {
    const found = await tx.selectFrom('tries').selectAll().where('key', '=', key).executeTakeFirst();
    const until = found ? waitUntil(found.failures, found.last_at) : at;
    if (until > at) return until;
    const counted = { failures: (found?.failures ?? 0) + 1, last_at: at };
    await tx
      .insertInto('tries')
      .values({ key, ...counted })
      .onConflict((c) => c.column('key').doUpdateSet(counted))
      .execute();
    return null;
  });
}
