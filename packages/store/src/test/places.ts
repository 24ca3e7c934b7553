/** Each database that a store may stand on, for tests that must hold on both. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe } from 'vitest';
import { openStore, restore, type Store } from '../index.ts';
import { freshFolder } from './cases.ts';
import { type PrivatePostgres, startPostgres } from './private-postgres.ts';

/** Where one set of records lies. */
export interface Place {
  readonly dir: string;
  readonly database: string | null;
  /** Opens the records; again and again, like several servers. */
  open(): Promise<Store>;
  /** Opens what a backup holds, in a new place. */
  openRestored(backup: string): Promise<Store>;
}

const LONGEST_MS = 60_000;

export type NewPlace = () => Promise<Place>;

/** Set where PostgreSQL is not installed and cannot be; never in continuous integration. */
export const isWithoutPostgres = process.env.BONEWRIGHT_NO_POSTGRES !== undefined;

/** Runs these tests on SQLite and on PostgreSQL. */
export function onEveryDatabase(tests: (newPlace: NewPlace, name: 'SQLite' | 'PostgreSQL') => void): void {
  describe('SQLite', () => tests(async () => place(freshFolder(), async () => null), 'SQLite'));
  describe.skipIf(isWithoutPostgres)('PostgreSQL', () => {
    const postgres = withPostgres();
    tests(() => place(freshFolder(), () => postgres().freshDatabase()), 'PostgreSQL');
  });
}

/** A PostgreSQL for the tests of one describe. */
export function withPostgres(): () => PrivatePostgres {
  let started: PrivatePostgres | null = null;
  beforeAll(async () => {
    started = await startPostgres();
  }, LONGEST_MS);
  afterAll(() => started?.stop(), LONGEST_MS);
  return () => {
    if (!started) throw new Error('PostgreSQL was not started');
    return started;
  };
}

async function place(parent: string, newDatabase: () => Promise<string | null>): Promise<Place> {
  const database = await newDatabase();
  const dir = join(parent, 'data');
  return {
    dir,
    database,
    open: () => openStore(dir, database),
    async openRestored(backup) {
      const elsewhere = { dir: freshFolder(), database: await newDatabase() };
      await restore(backup, elsewhere.dir, elsewhere.database);
      return openStore(elsewhere.dir, elsewhere.database);
    },
  };
}
