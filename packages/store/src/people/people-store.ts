/** People, their sessions and links, and the log of who came and what was refused. Hashes and tokens are made by the caller. */
import type { Role } from '@bonewright/casebook';

export interface Person {
  readonly id: string;
  /** As it stands in the record. Nobody else ever gets it again, written in whatever case. */
  readonly name: string;
  readonly role: Role;
  readonly isOwner: boolean;
  /** Switched off: cannot sign in; the name stays. */
  readonly isActive: boolean;
  /** The cases this person may open; null: all of them. */
  readonly cases: readonly string[] | null;
  /** The password's hash; null: none, so only a link opens anything. */
  readonly password: string | null;
  /** Until when a handed-over password opens the door to choosing an own one; null: it is an own one. */
  readonly temporaryUntil: string | null;
  readonly madeAt: string;
}

export type PersonChange = Partial<Omit<Person, 'id' | 'name' | 'madeAt'>>;

export interface Session {
  readonly id: string;
  readonly tokenHash: string;
  readonly personId: string;
  /** The link that opened it; null: signed in with a password. */
  readonly linkId: string | null;
  readonly startedAt: string;
  readonly seenAt: string;
  readonly expiresAt: string;
  readonly address: string;
  /** What the browser says of itself. */
  readonly device: string;
}

export interface CarerLink {
  readonly id: string;
  readonly tokenHash: string;
  readonly personId: string;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly expiresAt: string;
  readonly takenBackAt: string | null;
}

export interface LogEntry {
  /** Ordered by time. */
  readonly id: string;
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly about: string;
  readonly address: string;
}

export interface PeopleStore {
  /** Whether anybody who is switched on has a password. */
  hasAccounts(): Promise<boolean>;
  /** Throws InputError where the name was ever given to somebody. */
  add(person: Person): Promise<void>;
  list(): Promise<Person[]>;
  find(id: string): Promise<Person | null>;
  findByName(name: string): Promise<Person | null>;
  /** Throws InputError where no owner with a password would be left. */
  change(id: string, change: PersonChange): Promise<void>;

  startSession(session: Session): Promise<void>;
  /** The session with that token and whose it is, whatever its age; null where there is none. */
  session(tokenHash: string): Promise<{ readonly session: Session; readonly person: Person } | null>;
  seenSession(id: string, at: string): Promise<void>;
  sessionsOf(personId: string): Promise<Session[]>;
  /** Ends this session of that person, or all of them but one; says how many. */
  endSessions(personId: string, which: { readonly only: string } | { readonly butNot: string | null }): Promise<number>;

  addLink(link: CarerLink): Promise<void>;
  link(tokenHash: string): Promise<CarerLink | null>;
  links(): Promise<CarerLink[]>;
  /** The link and the sessions it opened end; false where there is no such link. */
  takeBackLink(id: string, at: string): Promise<boolean>;

  /**
   * Counts one try under that key, unless `waitUntil` of the failures so far still lies ahead: then nothing is counted
   * and that time comes back. A try counts as failed until it is forgiven.
   */
  countTry(key: string, at: string, waitUntil: (failures: number, lastAt: string) => string): Promise<string | null>;
  /** Takes back every counted try under that key, or the last one. */
  forgiveTries(key: string, which: 'all' | 'last'): Promise<void>;

  /** Adds to the log; nothing is ever taken out of it. */
  note(entry: LogEntry): Promise<void>;
  /** The newest first, before that entry, at most `limit`. */
  log(limit: number, before: string | null): Promise<LogEntry[]>;
}
