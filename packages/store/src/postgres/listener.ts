/** Hears what any server on the database announces, on a connection of its own that is made again when it is lost. */
import { Client, type ClientConfig } from 'pg';
import type { Watchers } from '../engine.ts';
import { NEWS } from '../store.ts';

export const CHANNEL = 'bonewright';
const AGAIN_MS = 1000;

export class Listener {
  readonly #config: ClientConfig;
  readonly #watchers: Watchers;
  #client: Client | null = null;
  #again: NodeJS.Timeout | null = null;
  #isClosed = false;

  constructor(config: ClientConfig, watchers: Watchers) {
    this.#config = config;
    this.#watchers = watchers;
  }

  async start(): Promise<void> {
    const client = new Client(this.#config);
    client.on('error', () => undefined);
    client.on('end', () => this.#startAgain(client));
    client.on('notification', ({ payload }) => {
      const news = NEWS.find((known) => known === payload);
      if (news) this.#watchers.tell(news);
    });
    this.#client = client;
    await client.connect();
    await client.query(`listen ${CHANNEL}`);
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    if (this.#again) clearTimeout(this.#again);
    await this.#client?.end();
  }

  #tellAll(): void {
    for (const news of NEWS) this.#watchers.tell(news);
  }

  #startAgain(lost: Client): void {
    if (this.#isClosed || this.#client !== lost || this.#again) return;
    this.#again = setTimeout(() => {
      this.#again = null;
      this.start().then(
        // What was announced meanwhile was not heard.
        () => this.#tellAll(),
        () => this.#client && this.#startAgain(this.#client),
      );
    }, AGAIN_MS);
  }
}
