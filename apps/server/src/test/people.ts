/** People for tests: an account with a session, asking as a page of ours would. */
import type { Role } from '@bonewright/casebook';
import type { FastifyInstance, InjectOptions, LightMyRequestResponse } from 'fastify';
import { makeFirstPerson, makePerson } from '../people/accounts.ts';
import { Passwords } from '../people/password.ts';
import { Sessions } from '../people/sessions.ts';
import { CHEAP, type Served } from './served.ts';

export const PASSWORD = 'hedge row under stars';
const passwords = new Passwords(CHEAP);

export type Ask = (options: InjectOptions) => Promise<LightMyRequestResponse>;

/** Asks with this session's cookie. */
export function asking(app: FastifyInstance, token: string | null): Ask {
  const cookies: Record<string, string> = token === null ? {} : { bonewright_session: token };
  return (options) => app.inject({ ...options, cookies, headers: { 'x-bonewright': 'page', ...options.headers } });
}

/** The first owner, with a password of the own, signed in. */
export async function owner(
  { app, store }: Served,
  name = 'R. Fenn',
): Promise<{ readonly id: string; readonly ask: Ask }> {
  const person = await makeFirstPerson(store.people, passwords, { name, role: 'surgeon', password: PASSWORD });
  const { token } = await new Sessions(store.people).start(person, { address: '127.0.0.1', device: 'test' });
  return { id: person.id, ask: asking(app, token) };
}

/** Somebody with that role, past the first sign-in. */
export async function somebody(
  { app, store }: Served,
  role: Role,
  cases: readonly string[] | null = null,
): Promise<{ readonly id: string; readonly name: string; readonly token: string; readonly ask: Ask }> {
  const name = `${role} ${(await store.people.list()).length}`;
  const { person } = await makePerson(store.people, passwords, { name, role, isOwner: false });
  const change = { temporaryUntil: null, password: await passwords.hash(PASSWORD), ...(cases && { cases }) };
  await store.people.change(person.id, change);
  const { token } = await new Sessions(store.people).start(
    { ...person, ...change },
    { address: '127.0.0.1', device: 'test' },
  );
  return { id: person.id, name, token, ask: asking(app, token) };
}
