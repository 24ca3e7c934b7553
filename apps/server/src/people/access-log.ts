/** Writes down who came, what was refused and what was changed about people; only ever added to. */
import type { PeopleStore } from '@bonewright/store';
import type { FastifyRequest } from 'fastify';
import { newId } from './tokens.ts';

const LONGEST = 300;

export class AccessLog {
  readonly #people: PeopleStore;

  constructor(people: PeopleStore) {
    this.#people = people;
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
