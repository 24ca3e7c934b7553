/** Things done once in this folder. */
import type { Database } from './tables.ts';

export async function mark(db: Database, name: string, at: string): Promise<void> {
  await db
    .insertInto('marks')
    .values({ name, made_at: at })
    .onConflict((c) => c.doNothing())
    .execute();
}

export async function isMarked(db: Database, name: string): Promise<boolean> {
  const found = await db.selectFrom('marks').select('name').where('name', '=', name).executeTakeFirst();
  return found !== undefined;
}
