/** Signing in: one answer for a wrong name and a wrong password, and a wait that grows. */
import type { PeopleStore, Person } from '@bonewright/store';
import { WITH_ADDRESS, WITH_NAME, waitUntil, waitWords } from './lock-out.ts';
import type { Passwords } from './password.ts';
import { RefusedError } from './refused.ts';
import { hashOf } from './tokens.ts';

/** Throws RefusedError 401 where name and password do not fit, 429 where it is too early for another try. */
export async function whoseIs(
  people: PeopleStore,
  passwords: Passwords,
  given: { readonly name: string; readonly password: string; readonly address: string },
): Promise<Person> {
  const now = new Date();
  const byName = `name:${given.name.normalize('NFKC').trim().toLowerCase()}`;
  const byAddress = `address:${given.address}`;
  await countTry(people, byAddress, WITH_ADDRESS, now);
  await countTry(people, byName, WITH_NAME, now);
  const person = await people.findByName(given.name);
  const usable = person?.isActive === true && !isStale(person, now) ? person : null;
  const isRight = await passwords.isRight(given.password, usable?.password ?? null);
  if (!usable || !isRight) throw new RefusedError(401, 'Name and password do not fit. Check both, then sign in again.');
  await people.forgiveTries(byName, 'all');
  await people.forgiveTries(byAddress, 'last');
  return usable;
}

/** The person a link is for. Throws RefusedError where it opens nothing any more. */
export async function whoseLinkIs(people: PeopleStore, token: string, address: string) {
  const now = new Date();
  const byAddress = `link:${address}`;
  await countTry(people, byAddress, WITH_ADDRESS, now);
  const link = await people.link(hashOf(token));
  const person = link && (await people.find(link.personId));
  const isOpen = link && link.takenBackAt === null && Date.parse(link.expiresAt) > now.getTime();
  if (!isOpen || !person?.isActive || person.role !== 'carer')
    throw new RefusedError(401, 'This link opens nothing any more. Ask the practice for a new one.');
  await people.forgiveTries(byAddress, 'last');
  return { link, person };
}

async function countTry(
  people: PeopleStore,
  key: string,
  patience: Parameters<typeof waitUntil>[0],
  now: Date,
): Promise<void> {
  const until = await people.countTry(key, now.toISOString(), waitUntil(patience));
  if (until !== null)
    throw new RefusedError(429, `Too many tries did not fit. Try again in ${waitWords(until, now)}.`, until);
}

/** A handed-over password that was never used in time. */
function isStale({ temporaryUntil }: Person, now: Date): boolean {
  return temporaryUntil !== null && Date.parse(temporaryUntil) <= now.getTime();
}
