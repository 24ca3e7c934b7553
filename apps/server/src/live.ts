/** Tells every open page what was recorded, in order and without a gap, also after a page was away for a while. */
import type { ServerResponse } from 'node:http';
import type { Store } from '@bonewright/store';

const PAGE = 200;
const STILL_HERE_MS = 20_000;

export class Live {
  readonly #store: Store;
  readonly #listeners = new Set<Listener>();
  readonly #heartbeat = setInterval(() => this.#each((l) => l.say(': still here\n\n')), STILL_HERE_MS).unref();

  readonly #unwatch: () => void;

  constructor(store: Store) {
    this.#store = store;
    const told = { events: () => this.changed(), inbox: () => this.#inboxChanged(), cases: () => this.reset() };
    this.#unwatch = store.watch((news) => told[news]());
  }

  /** Streams to this page from the change after `position` on; without a position, from now on. */
  async listen(response: ServerResponse, position: number | null): Promise<void> {
    const last = await this.#store.lastPosition();
    if (response.destroyed) return;
    const listener = new Listener(this.#store, response, position ?? last);
    this.#listeners.add(listener);
    response.once('close', () => this.#listeners.delete(listener));
    listener.say(`retry: 2000\nid: ${position ?? last}\nevent: hello\ndata: {}\n\n`);
    if (position !== null && position > last) listener.say(`id: ${last}\nevent: reset\ndata: {}\n\n`);
    listener.catchUp();
  }

  /** Something was recorded. */
  changed(): void {
    this.#each((listener) => listener.catchUp());
  }

  /** Whole cases went or came: every page reads the board again. */
  reset(): void {
    this.#each((listener) => listener.say('event: reset\ndata: {}\n\n'));
    this.changed();
  }

  /** A film came from the X-ray machine, or one was taken off the list. */
  #inboxChanged(): void {
    this.#each((listener) => listener.say('event: inbox\ndata: {}\n\n'));
  }

  close(): void {
    clearInterval(this.#heartbeat);
    this.#unwatch();
    this.#each((listener) => listener.end());
  }

  #each(tell: (listener: Listener) => void): void {
    for (const listener of this.#listeners) tell(listener);
  }
}

class Listener {
  readonly #store: Store;
  readonly #response: ServerResponse;
  #position: number;
  #isReading = false;
  #hasMore = false;

  constructor(store: Store, response: ServerResponse, position: number) {
    this.#store = store;
    this.#response = response;
    this.#position = position;
  }

  say(text: string): void {
    if (!this.#response.writableEnded) this.#response.write(text);
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
        this.say(`id: ${position}\nevent: change\ndata: ${JSON.stringify({ caseId, seq })}\n\n`);
      }
      if (changes.length === PAGE) this.#hasMore = true;
    }
  }
}
