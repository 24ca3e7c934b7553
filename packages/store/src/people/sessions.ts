/** Sessions and the links that open some of them. Only hashes of their tokens are kept. */
import type { Selectable } from 'kysely';
import type { Engine } from '../engine.ts';
import type { Database, Tables } from '../records/tables.ts';
import { personOf } from './people.ts';
import type { CarerLink, PeopleStore, Session } from './people-store.ts';

type Sessions = Pick<
  PeopleStore,
  | 'startSession'
  | 'session'
  | 'seenSession'
  | 'sessionsOf'
  | 'endSessions'
  | 'addLink'
  | 'link'
  | 'links'
  | 'takeBackLink'
>;

export function sessions({ db }: Engine): Sessions {
  return {
    async startSession(session) {
      await db.insertInto('sessions').values(sessionRow(session)).execute();
    },
    session: (tokenHash) => findSession(db, tokenHash),
    async seenSession(id, at) {
      await db.updateTable('sessions').set({ seen_at: at }).where('id', '=', id).execute();
    },
    async sessionsOf(personId) {
      const rows = await db
        .selectFrom('sessions')
        .selectAll()
        .where('person_id', '=', personId)
        .orderBy('seen_at', 'desc')
        .execute();
      return rows.map(sessionOf);
    },
    async endSessions(personId, which) {
      const ofPerson = db.deleteFrom('sessions').where('person_id', '=', personId);
      const meant =
        'only' in which ? ofPerson.where('id', '=', which.only) : ofPerson.where('id', '!=', which.butNot ?? '');
      return Number((await meant.executeTakeFirst()).numDeletedRows);
    },
    async addLink(link) {
      await db.insertInto('links').values(linkRow(link)).execute();
    },
    async link(tokenHash) {
      const row = await db.selectFrom('links').selectAll().where('token_hash', '=', tokenHash).executeTakeFirst();
      return row ? linkOf(row) : null;
    },
    async links() {
      return (await db.selectFrom('links').selectAll().orderBy('made_at', 'desc').execute()).map(linkOf);
    },
    takeBackLink: (id, at) => takeBack(db, id, at),
  };
}

async function findSession(db: Database, tokenHash: string): ReturnType<PeopleStore['session']> {
  const session = await db.selectFrom('sessions').selectAll().where('token_hash', '=', tokenHash).executeTakeFirst();
  if (!session) return null;
  const person = await db
    .selectFrom('people')
    .selectAll()
    .where('id', '=', session.person_id)
    .executeTakeFirstOrThrow();
  return { session: sessionOf(session), person: personOf(person) };
}

async function takeBack(db: Database, id: string, at: string): Promise<boolean> {
  return db.transaction().execute(async (tx) => {
    await tx.deleteFrom('sessions').where('link_id', '=', id).execute();
    const { numUpdatedRows } = await tx
      .updateTable('links')
      .set({ taken_back_at: at })
      .where('id', '=', id)
      .where('taken_back_at', 'is', null)
      .executeTakeFirst();
    return numUpdatedRows > 0n;
  });
}

function sessionRow(session: Session): Tables['sessions'] {
  return {
    id: session.id,
    token_hash: session.tokenHash,
    person_id: session.personId,
    link_id: session.linkId,
    started_at: session.startedAt,
    seen_at: session.seenAt,
    expires_at: session.expiresAt,
    address: session.address,
    device: session.device,
  };
}

function sessionOf(row: Selectable<Tables['sessions']>): Session {
  return {
    id: row.id,
    tokenHash: row.token_hash,
    personId: row.person_id,
    linkId: row.link_id,
    startedAt: row.started_at,
    seenAt: row.seen_at,
    expiresAt: row.expires_at,
    address: row.address,
    device: row.device,
  };
}

function linkRow(link: CarerLink): Tables['links'] {
  return {
    id: link.id,
    token_hash: link.tokenHash,
    person_id: link.personId,
    made_at: link.madeAt,
    made_by: link.madeBy,
    expires_at: link.expiresAt,
    taken_back_at: link.takenBackAt,
  };
}

function linkOf(row: Selectable<Tables['links']>): CarerLink {
  return {
    id: row.id,
    tokenHash: row.token_hash,
    personId: row.person_id,
    madeAt: row.made_at,
    madeBy: row.made_by,
    expiresAt: row.expires_at,
    takenBackAt: row.taken_back_at,
  };
}
