/** Makes the tables, step by step; a step that has been released is never edited. */
import { type Migration, Migrator, sql } from 'kysely';
import type { Engine } from '../engine.ts';
import { PEOPLE_STEP } from '../people/people-steps.ts';
import type { SearchIndex } from '../search/search-index.ts';
import type { Database } from './tables.ts';

const STEPS: Record<string, Migration> = {
  '0001-records': {
    async up(db) {
      await db.schema
        .createTable('events')
        .addColumn('position', 'integer', (c) => c.primaryKey().autoIncrement())
        .addColumn('id', 'text', (c) => c.notNull().unique())
        .addColumn('case_id', 'text', (c) => c.notNull())
        .addColumn('seq', 'integer', (c) => c.notNull())
        .addColumn('received_at', 'text', (c) => c.notNull())
        .addColumn('body', 'text', (c) => c.notNull())
        .addColumn('hash', 'text', (c) => c.notNull())
        .addUniqueConstraint('events_case_seq', ['case_id', 'seq'])
        .execute();
      await db.schema
        .createTable('cases')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('seq', 'integer', (c) => c.notNull())
        .addColumn('position', 'integer', (c) => c.notNull())
        .addColumn('hash', 'text', (c) => c.notNull())
        .addColumn('is_demonstration', 'integer', (c) => c.notNull().defaultTo(sql`0`))
        .addColumn('row', 'text', (c) => c.notNull())
        .addColumn('row_version', 'integer', (c) => c.notNull())
        .execute();
      await db.schema.createIndex('cases_position').on('cases').column('position').execute();
      await db.schema
        .createTable('attachments')
        .addColumn('sha256', 'text', (c) => c.primaryKey())
        .addColumn('byte_length', 'integer', (c) => c.notNull())
        .addColumn('received_at', 'text', (c) => c.notNull())
        .execute();
      await db.schema
        .createTable('marks')
        .addColumn('name', 'text', (c) => c.primaryKey())
        .addColumn('made_at', 'text', (c) => c.notNull())
        .execute();
    },
  },
  '0002-received-films': {
    async up(db) {
      await db.schema
        .createTable('received_films')
        .addColumn('sha256', 'text', (c) => c.primaryKey().references('attachments.sha256'))
        .addColumn('sender', 'text', (c) => c.notNull())
        .addColumn('received_at', 'text', (c) => c.notNull())
        .addColumn('header', 'text', (c) => c.notNull())
        .addColumn('outcome', 'text')
        .addColumn('detail', 'text')
        .addColumn('settled_at', 'text')
        .execute();
    },
  },
  '0003-practice': {
    async up(db) {
      await db.schema
        .createTable('practice')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('seq', 'integer', (c) => c.notNull())
        .addColumn('position', 'integer', (c) => c.notNull())
        .addColumn('hash', 'text', (c) => c.notNull())
        .execute();
    },
  },
  '0004-people': PEOPLE_STEP,
};

/** Cases that ended are told from the others, the numbers of a year can be asked for, and everything is found by words. */
const boardAndSearch = (index: SearchIndex): Migration => ({
  async up(db: Database) {
    await db.schema
      .alterTable('cases')
      .addColumn('ended', 'integer', (c) => c.notNull().defaultTo(sql`0`))
      .execute();
    await db.schema
      .alterTable('cases')
      .addColumn('number', 'text', (c) => c.notNull().defaultTo(''))
      .execute();
    await db.schema.createIndex('cases_ended').on('cases').columns(['ended', 'position']).execute();
    await db.schema.createIndex('cases_number').on('cases').column('number').execute();
    await db.schema.createIndex('cases_row_version').on('cases').column('row_version').execute();
    await db.schema
      .createTable('search_lines')
      .addColumn('case_id', 'text', (c) => c.notNull())
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('text', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('search_lines_key', ['case_id', 'seq'])
      .execute();
    await index.create(db);
  },
});

/** Brings the tables to this version. Throws where a step fails; the database is then as it was. */
export async function bringUpToDate({ db, index }: Pick<Engine, 'db' | 'index'>): Promise<void> {
  const steps = { ...STEPS, '0005-board-and-search': boardAndSearch(index) };
  const migrator = new Migrator({
    db,
    provider: { getMigrations: async () => steps },
    allowUnorderedMigrations: true,
  });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
}
