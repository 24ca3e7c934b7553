/** People on the database: who there is, and that an owner is always left. */
import { InputError } from '@bonewright/fault';
import type { Selectable } from 'kysely';
import type { Engine } from '../engine.ts';
import type { Database, DatabaseTransaction, Tables } from '../records/tables.ts';
import type { PeopleStore, Person, PersonChange } from './people-store.ts';

type Row = Selectable<Tables['people']>;

export function people(
  engine: Engine,
): Pick<PeopleStore, 'hasAccounts' | 'add' | 'list' | 'find' | 'findByName' | 'change'> {
  const { db } = engine;
  return {
    hasAccounts: () => hasAccounts(db),
    add: (person) => add(engine, person),
    list: async () => (await db.selectFrom('people').selectAll().orderBy('name_key').execute()).map(personOf),
    find: (id) => findWhere(db, 'id', id),
    findByName: (name) => findWhere(db, 'name_key', nameKey(name)),
    change: (id, change) => engine.recording((tx) => changePerson(tx, id, change)),
  };
}

/** Names that look alike are one: case, spaces and forms of a letter do not tell people apart. */
function nameKey(name: string): string {
  return name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
}

async function hasAccounts(db: Database): Promise<boolean> {
  const found = await db
    .selectFrom('people')
    .select('id')
    .where('is_active', '=', 1)
    .where('password', 'is not', null)
    .limit(1)
    .executeTakeFirst();
  return found !== undefined;
}

async function add({ recording }: Engine, person: Person): Promise<void> {
  await recording(async (tx) => {
    const name_key = nameKey(person.name);
    const taken = await tx.selectFrom('people').select('id').where('name_key', '=', name_key).executeTakeFirst();
    if (taken)
      throw new InputError(
        `"${person.name}" is somebody's name already`,
        'name',
        'a name stands for one person for good',
      );
    const { id, name, madeAt: made_at } = person;
    await tx
      .insertInto('people')
      .values({ id, name, name_key, made_at, ...columnsOf(person) })
      .execute();
  });
}

async function findWhere(db: Database, column: 'id' | 'name_key', value: string): Promise<Person | null> {
  const row = await db.selectFrom('people').selectAll().where(column, '=', value).executeTakeFirst();
  return row ? personOf(row) : null;
}

async function changePerson(tx: DatabaseTransaction, id: string, change: PersonChange): Promise<void> {
  const row = await tx.selectFrom('people').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) throw new InputError('there is no such person', 'id', 'read the list of people again');
  await tx
    .updateTable('people')
    .set(columnsOf({ ...personOf(row), ...change }))
    .where('id', '=', id)
    .execute();
  if (isWorkingOwner(personOf(row))) await requireOwner(tx);
}

const isWorkingOwner = ({ isOwner, isActive, password }: Person): boolean => isOwner && isActive && password !== null;

async function requireOwner(tx: DatabaseTransaction): Promise<void> {
  const left = await tx
    .selectFrom('people')
    .select('id')
    .where('is_owner', '=', 1)
    .where('is_active', '=', 1)
    .where('password', 'is not', null)
    .limit(1)
    .executeTakeFirst();
  if (!left)
    throw new InputError('nobody would be left to manage people', 'isOwner', 'make somebody else an owner first');
}

function columnsOf(person: Omit<Person, 'id' | 'name' | 'madeAt'>) {
  return {
    role: person.role,
    is_owner: person.isOwner ? 1 : 0,
    is_active: person.isActive ? 1 : 0,
    cases: person.cases === null ? null : JSON.stringify(person.cases),
    password: person.password,
    temporary_until: person.temporaryUntil,
  };
}

export function personOf(row: Row): Person {
  return {
    id: row.id,
    name: row.name,
    role: row.role,
    isOwner: row.is_owner === 1,
    isActive: row.is_active === 1,
    cases: row.cases === null ? null : JSON.parse(row.cases),
    password: row.password,
    temporaryUntil: row.temporary_until,
    madeAt: row.made_at,
  };
}
