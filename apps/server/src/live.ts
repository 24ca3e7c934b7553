/** Tells every open page what was recorded, in order and without a gap, also after a page was away for a while. */
import type { ServerResponse } from 'node:http';
import { holds, mayOpen, type Right, type Subject } from '@bonewright/casebook';
import type { Store } from '@bonewright/store';

/** What a page hears, and the right each message asks for. */
const MESSAGES = {
  change: 'read cases',
  reset: 'read cases',
  inbox: 'films from machines',
} as const satisfies Record<string, Right>;
type Message = keyof typeof MESSAGES;

/** Whoever listens, and whether that still holds. */
export interface Hearer {
  readonly subject: Subject;
  readonly isStillThere: () => Promise<boolean>;
}

const PAGE = 200;
const STILL_HERE_MS = 20_000;

export class Live {
  readonly #store: Store;
  readonly #listeners = new Set<Listener>();
  readonly #heartbeat = setInterval(() => this.#beat(), STILL_HERE_MS).unref();

  readonly #unwatch: () => void;

  constructor(store: Store) {
    this.#store = store;
    const told = { events: () => this.changed(), inbox: () => this.#inboxChanged(), cases: () => this.reset() };
    this.#unwatch = store.watch((news) => told[news]());
  }

  /** Streams to this page from the change after `position` on; without a position, from now on. */
  async listen(response: ServerResponse, position: number | null, hearer: Hearer): Promise<void> {
    const last = await this.#store.lastPosition();
    if (response.destroyed) return;
    const listener = new Listener(this.#store, response, position ?? last, hearer);
    this.#listeners.add(listener);
    response.once('close', () => this.#listeners.delete(listener));
    listener.say(`retry: 2000\nid: ${position ?? last}\nevent: hello\ndata: {}\n\n`);
    if (position !== null && position > last) listener.tell('reset', {}, last);
    listener.catchUp();
  }

  /** Something was recorded. */
  changed(): void {
    this.#each((listener) => listener.catchUp());
  }

  /** Whole cases went or came: every page reads the board again. */
  reset(): void {
    this.#each((listener) => listener.tell('reset', {}));
    this.changed();
  }

  /** A film came from the X-ray machine, or one was taken off the list. */
  #inboxChanged(): void {
    this.#each((listener) => listener.tell('inbox', {}));
  }

  /** Somebody signed out or may do less: whoever may no longer listen is sent away. */
  checkHearers(): void {
    this.#each((listener) => void listener.check());
  }

  close(): void {
    clearInterval(this.#heartbeat);
    this.#unwatch();
    this.#each((listener) => listener.end());
  }

  #beat(): void {
    this.#each((listener) => listener.say(': still here\n\n'));
    this.checkHearers();
  }

  #each(tell: (listener: Listener) => void): void {
    for (const listener of this.#listeners) tell(listener);
  }
}

class Listener {
  readonly #store: Store;
  readonly #response: ServerResponse;
  readonly #hearer: Hearer;
  #position: number;
  #isReading = false;
  #hasMore = false;

  constructor(store: Store, response: ServerResponse, position: number, hearer: Hearer) {
    this.#store = store;
    this.#response = response;
    this.#hearer = hearer;
    this.#position = position;
  }

  say(text: string): void {
    if (!this.#response.writableEnded) this.#response.write(text);
  }

  /** Says it where this page may hear it. */
  tell(message: Message, data: object, id?: number): void {
    if (!holds(this.#hearer.subject, MESSAGES[message])) return;
    this.say(`${id === undefined ? '' : `id: ${id}\n`}event: ${message}\ndata: ${JSON.stringify(data)}\n\n`);
  }

  async check(): Promise<void> {
    const isThere = await this.#hearer.isStillThere().catch(() => false);
    if (!isThere) this.end();
  }

  end(): void {
    this.#response.end();
  }

  /** Sends what is recorded after the last change sent; one reader at a time, so that the order holds. */
  catchUp(): void {
    this.#hasMore = true;
    if (this.#isReading) return;
    this.#isReading = true;
    this.#sendAll()
      .catch(() => this.end())
      .finally(() => {
        this.#isReading = false;
      });
  }

  async #sendAll(): Promise<void> {
    while (this.#hasMore && !this.#response.writableEnded) {
      this.#hasMore = false;
      const changes = await this.#store.changesAfter(this.#position, PAGE);
      for (const { position, caseId, seq } of changes) {
        this.#position = position;
        if (mayOpen(this.#hearer.subject, caseId)) this.tell('change', { caseId, seq }, position);
      }
      if (changes.length === PAGE) this.#hasMore = true;
    }
  }
}
