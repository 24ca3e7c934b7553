/** Making and changing accounts; used by the pages and, on this machine, by the command line. */
import type { Role } from '@bonewright/casebook';
import type { PeopleStore, Person } from '@bonewright/store';
import { handedOverPassword, type Passwords } from './password.ts';
import { newId } from './tokens.ts';

const HANDED_OVER_MS = 7 * 24 * 3600 * 1000;

export interface NewPerson {
  readonly name: string;
  readonly role: Role;
  readonly isOwner: boolean;
}

interface Made {
  readonly person: Person;
  /** To be handed over; it opens the door once, to choosing an own one. */
  readonly password: string;
}

/** Makes an account with a password to hand over. The first one is an owner, whatever was asked. Throws InputError for a taken name. */
export async function makePerson(people: PeopleStore, passwords: Passwords, asked: NewPerson): Promise<Made> {
  const password = handedOverPassword();
  const person = { ...(await newPerson(people, asked)), ...(await temporary(passwords, password)) };
  await people.add(person);
  return { person, password };
}

/** Makes the first account, with a password of the person's own. Throws InputError for a taken name. */
export async function makeFirstPerson(
  people: PeopleStore,
  passwords: Passwords,
  asked: Omit<NewPerson, 'isOwner'> & { readonly password: string },
): Promise<Person> {
  const made = await newPerson(people, { ...asked, isOwner: true });
  const person = { ...made, password: await passwords.hash(asked.password) };
  await people.add(person);
  return person;
}

/** A new password to hand over; whoever is signed in as this person is signed out. Throws InputError for nobody's id. */
export async function handOverPassword(people: PeopleStore, passwords: Passwords, id: string): Promise<string> {
  const password = handedOverPassword();
  await people.change(id, await temporary(passwords, password));
  await people.endSessions(id, { butNot: null });
  return password;
}

async function temporary(passwords: Passwords, password: string): Promise<Pick<Person, 'password' | 'temporaryUntil'>> {
  const temporaryUntil = new Date(Date.now() + HANDED_OVER_MS).toISOString();
  return { password: await passwords.hash(password), temporaryUntil };
}

async function newPerson(people: PeopleStore, { name, role, isOwner }: NewPerson): Promise<Person> {
  const isFirst = !(await people.hasAccounts());
  return {
    id: newId(),
    name: name.trim().replace(/\s+/g, ' '),
    role,
    isOwner: isOwner || isFirst,
    isActive: true,
    cases: role === 'carer' ? [] : null,
    password: null,
    temporaryUntil: null,
    madeAt: new Date().toISOString(),
  };
}
