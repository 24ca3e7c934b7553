/** Writes down who came, what was refused and what was changed about people; only ever added to. */
import type { PeopleStore } from '@bonewright/store';
import type { FastifyRequest } from 'fastify';
import { newId } from './tokens.ts';

const LONGEST = 300;
const MOST_REMEMBERED = 10_000;

export class AccessLog {
  readonly #people: PeopleStore;

  readonly #opened = new Set<string>();

  constructor(people: PeopleStore) {
    this.#people = people;
  }

  /** Somebody signed in opened a case: once a session, however often the page reads it. */
  async noteOpened(request: FastifyRequest, caseId: string): Promise<void> {
    const { asker } = request;
    const key = asker && 'sessionId' in asker ? `${asker.sessionId} ${caseId}` : null;
    if (key === null || this.#opened.has(key)) return;
    if (this.#opened.size >= MOST_REMEMBERED) this.#opened.clear();
    this.#opened.add(key);
    await this.note(request, 'opened case', caseId);
  }

  async note(request: FastifyRequest, what: string, about = '', who = whoAsks(request)): Promise<void> {
    const at = new Date().toISOString();
    const id = `${at}-${newId()}`;
    await this.#people.note({ id, at, who: cut(who), what, about: cut(about), address: request.ip });
  }
}

const cut = (text: string): string => text.slice(0, LONGEST);

function whoAsks({ asker }: FastifyRequest): string {
  if (!asker) return 'nobody signed in';
  return asker.name ?? 'this machine';
}
