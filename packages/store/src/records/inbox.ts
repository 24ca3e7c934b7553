/** The list of films that machines sent and nobody has matched to a case. */
import { InputError } from '@bonewright/fault';
import type { Engine } from '../engine.ts';
import type { FilmOutcome, Inbox, ReceivedFilm } from '../store.ts';
import type { Database } from './tables.ts';

export function inbox({ db, announce }: Engine, now: () => string): Inbox {
  return {
    async add({ sha256, sender, header }) {
      const waiting = { sender, header: JSON.stringify(header), received_at: now(), ...NOT_SETTLED };
      await db
        .insertInto('received_films')
        .values({ sha256, ...waiting })
        .onConflict((c) => c.column('sha256').doUpdateSet(waiting))
        .execute();
      await announce(db, 'inbox');
    },
    waiting: () => waiting(db),
    async settle(sha256, outcome) {
      const isSettled = await settle(db, sha256, outcome, now());
      if (isSettled) await announce(db, 'inbox');
      return isSettled;
    },
  };
}

const NOT_SETTLED = { outcome: null, detail: null, settled_at: null };

async function waiting(db: Database): Promise<ReceivedFilm[]> {
  const rows = await db
    .selectFrom('received_films as film')
    .innerJoin('attachments as file', 'file.sha256', 'film.sha256')
    .select(['film.sha256', 'film.sender', 'film.received_at', 'film.header', 'file.byte_length'])
    .where('film.outcome', 'is', null)
    .orderBy('film.received_at', 'desc')
    .orderBy('film.sha256')
    .execute();
  return rows.map(({ sha256, sender, received_at: receivedAt, header, byte_length: byteLength }) => ({
    ...{ sha256, byteLength, receivedAt, sender, header: JSON.parse(header) },
  }));
}

async function settle(db: Database, sha256: string, outcome: FilmOutcome, at: string): Promise<boolean> {
  if ('matched' in outcome) await requireCase(db, outcome.matched);
  const said =
    'matched' in outcome
      ? { outcome: 'matched' as const, detail: outcome.matched }
      : { outcome: 'set aside' as const, detail: outcome.setAside };
  const { numUpdatedRows } = await db
    .updateTable('received_films')
    .set({ ...said, settled_at: at })
    .where('sha256', '=', sha256)
    .where('outcome', 'is', null)
    .executeTakeFirst();
  return numUpdatedRows > 0n;
}

async function requireCase(db: Database, id: string): Promise<void> {
  const found = await db.selectFrom('cases').select('id').where('id', '=', id).executeTakeFirst();
  if (!found) throw new InputError('there is no such case here', 'caseId', 'open the case first, then match the film');
}
