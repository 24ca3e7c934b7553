/** Sessions: opened with a password or a link, known by a cookie, ended by time, by the person or by an owner. */
import type { Subject } from '@bonewright/casebook';
import type { PeopleStore, Person, Session } from '@bonewright/store';
import { hashOf, newId, newToken } from './tokens.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;
/**
 * OWASP ASVS 4.0.3, 3.3.2 asks for 12 hours or 30 minutes idle at level 2. An operation outlasts 30 minutes without a
 * touch of the screen, so idle is two hours here.
 */
const LONGEST_MS = 12 * HOUR_MS;
const IDLE_MS = 2 * HOUR_MS;
/** A carer looks in now and then; the link's own end is the last. */
const LINK_IDLE_MS = 14 * DAY_MS;
const SEEN_EVERY_MS = MINUTE_MS;
const LONGEST_DEVICE = 200;

/** Whoever is signed in. */
export interface SignedIn extends Subject {
  readonly name: string;
  readonly personId: string;
  readonly sessionId: string;
  /** Came by a carer's link. */
  readonly isLink: boolean;
}

export interface From {
  readonly address: string;
  readonly device: string;
}

export class Sessions {
  readonly #people: PeopleStore;

  constructor(people: PeopleStore) {
    this.#people = people;
  }

  /** Opens one and gives its token, once. `link` limits it to the link's own end. */
  async start(
    person: Person,
    from: From,
    link: { readonly id: string; readonly expiresAt: string } | null = null,
  ): Promise<{ readonly token: string; readonly expiresAt: string; readonly subject: SignedIn }> {
    const now = new Date();
    const { token, tokenHash } = newToken();
    const session: Session = {
      id: newId(),
      tokenHash,
      personId: person.id,
      linkId: link?.id ?? null,
      startedAt: now.toISOString(),
      seenAt: now.toISOString(),
      expiresAt: link?.expiresAt ?? new Date(now.getTime() + LONGEST_MS).toISOString(),
      address: from.address,
      device: from.device.slice(0, LONGEST_DEVICE),
    };
    await this.#people.startSession(session);
    return { token, expiresAt: session.expiresAt, subject: subjectOf(person, session) };
  }

  /** Who holds this token; null where it opens nothing any more. */
  async find(token: string): Promise<SignedIn | null> {
    const found = await this.#people.session(hashOf(token));
    if (!found) return null;
    const { session, person } = found;
    const now = new Date();
    if (isOver(person, session, now)) {
      await this.#people.endSessions(person.id, { only: session.id });
      return null;
    }
    if (now.getTime() - Date.parse(session.seenAt) > SEEN_EVERY_MS)
      await this.#people.seenSession(session.id, now.toISOString());
    return subjectOf(person, session);
  }

  /** The same, for a page that only listens: it does not count as being there. */
  async peek(token: string): Promise<SignedIn | null> {
    const found = await this.#people.session(hashOf(token));
    return found && !isOver(found.person, found.session, new Date()) ? subjectOf(found.person, found.session) : null;
  }
}

function isOver(person: Person, { expiresAt, seenAt, linkId }: Session, now: Date): boolean {
  if (!person.isActive || (linkId !== null && person.role !== 'carer')) return true;
  const idleMs = linkId === null ? IDLE_MS : LINK_IDLE_MS;
  return Date.parse(expiresAt) <= now.getTime() || now.getTime() - Date.parse(seenAt) > idleMs;
}

function subjectOf(person: Person, session: Session): SignedIn {
  const { name, role, isOwner, cases, temporaryUntil } = person;
  const isLink = session.linkId !== null;
  return {
    ...{ name, role, cases, personId: person.id, sessionId: session.id, isLink },
    isOwner: isOwner && !isLink,
    mustChoosePassword: temporaryUntil !== null && !isLink,
  };
}
