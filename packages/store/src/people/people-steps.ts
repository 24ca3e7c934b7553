/** The tables of people. */
import type { Migration } from 'kysely';

export const PEOPLE_STEP: Migration = {
  async up(db) {
    await db.schema
      .createTable('people')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('name_key', 'text', (c) => c.notNull().unique())
      .addColumn('role', 'text', (c) => c.notNull())
      .addColumn('is_owner', 'integer', (c) => c.notNull())
      .addColumn('is_active', 'integer', (c) => c.notNull())
      .addColumn('cases', 'text')
      .addColumn('password', 'text')
      .addColumn('temporary_until', 'text')
      .addColumn('made_at', 'text', (c) => c.notNull())
      .execute();
    await db.schema
      .createTable('links')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('token_hash', 'text', (c) => c.notNull().unique())
      .addColumn('person_id', 'text', (c) => c.notNull().references('people.id'))
      .addColumn('made_at', 'text', (c) => c.notNull())
      .addColumn('made_by', 'text', (c) => c.notNull())
      .addColumn('expires_at', 'text', (c) => c.notNull())
      .addColumn('taken_back_at', 'text')
      .execute();
    await db.schema
      .createTable('sessions')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('token_hash', 'text', (c) => c.notNull().unique())
      .addColumn('person_id', 'text', (c) => c.notNull().references('people.id'))
      .addColumn('link_id', 'text', (c) => c.references('links.id'))
      .addColumn('started_at', 'text', (c) => c.notNull())
      .addColumn('seen_at', 'text', (c) => c.notNull())
      .addColumn('expires_at', 'text', (c) => c.notNull())
      .addColumn('address', 'text', (c) => c.notNull())
      .addColumn('device', 'text', (c) => c.notNull())
      .execute();
    await db.schema.createIndex('sessions_person').on('sessions').column('person_id').execute();
    await db.schema
      .createTable('tries')
      .addColumn('key', 'text', (c) => c.primaryKey())
      .addColumn('failures', 'integer', (c) => c.notNull())
      .addColumn('last_at', 'text', (c) => c.notNull())
      .execute();
    await db.schema
      .createTable('access_log')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('at', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.notNull())
      .addColumn('what', 'text', (c) => c.notNull())
      .addColumn('about', 'text', (c) => c.notNull())
      .addColumn('address', 'text', (c) => c.notNull())
      .execute();
  },
};
