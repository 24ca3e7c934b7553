/** `people add NAME --role ROLE [--owner]`, `people password NAME`, `people list`, each with `--data DIR`: accounts, at the machine that keeps them. */
import { ROLES, type Role } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { handOverPassword, makePerson, Passwords } from '@bonewright/server';
import { openStore, type PeopleStore } from '@bonewright/store';
import { userPath } from '../files.ts';
import { print } from '../output.ts';
import { parsedArguments } from '../parsed-arguments.ts';

const USAGE =
  'people add NAME --role ROLE [--owner] --data DIR, people password NAME --data DIR, or people list --data DIR';
const OPTIONS = { data: { type: 'string' }, role: { type: 'string' }, owner: { type: 'boolean' } } as const;

export async function run(args: readonly string[]): Promise<void> {
  const { values, positionals } = parsedArguments(args, OPTIONS, USAGE);
  if (!values.data) throw new InputError('no data folder was given', '--data', `use: ${USAGE}`);
  const [what, name] = positionals;
  const store = await openStore(userPath(values.data));
  try {
    if (what === 'list') return print({ people: await listed(store.people) });
    if (!name) throw new InputError('no name was given', '', `use: ${USAGE}`);
    if (what === 'add') return print(await add(store.people, name, values.role ?? '', values.owner ?? false));
    if (what === 'password') return print(await newPassword(store.people, name));
    throw new InputError(`"${what}" is nothing that people can do`, '', `use: ${USAGE}`);
  } finally {
    await store.close();
  }
}

async function listed(people: PeopleStore): Promise<object[]> {
  return (await people.list()).map(({ name, role, isOwner, isActive }) => ({ name, role, isOwner, isActive }));
}

/** The password is printed once; it opens the door to choosing an own one, for a week. */
async function add(people: PeopleStore, name: string, role: string, isOwner: boolean): Promise<object> {
  if (!isRole(role)) throw new InputError(`"${role}" is not a role`, '--role', `use one of ${ROLES.join(', ')}`);
  const { person, password } = await makePerson(people, new Passwords(), { name, role, isOwner });
  return { name: person.name, role, isOwner: person.isOwner, password };
}

async function newPassword(people: PeopleStore, name: string): Promise<object> {
  const person = await people.findByName(name);
  if (!person) throw new InputError(`nobody here is called "${name}"`, '', 'look at people list');
  return { name: person.name, password: await handOverPassword(people, new Passwords(), person.id) };
}

const isRole = (word: string): word is Role => ROLES.some((role) => role === word);
