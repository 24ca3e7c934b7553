/** Films straight from the X-ray machine into the inbox: off unless an address was given. */
import type { Store } from '@bonewright/store';
import { keepFilm } from './keep-film.ts';
import type { Listening } from './listen.ts';
import type { ReceiveOptions } from './receive-options.ts';

export interface Log {
  write(line: string): void;
}

export class Receiver {
  readonly #store: Store;
  readonly #log: Log | undefined;
  readonly #keeping = new Set<Promise<void>>();
  #at: (ReceiveOptions & Listening) | null = null;

  constructor(store: Store, log?: Log) {
    this.#store = store;
    this.#log = log;
  }

  /** Where machines may send to; null while receiving is off. */
  get at(): ReceiveOptions | null {
    if (!this.#at) return null;
    const { address, port, title } = this.#at;
    return { address, port, title };
  }

  /** Throws InputError where the address or port cannot be used. */
  async start(options: ReceiveOptions): Promise<void> {
    const { listen } = await import('./listen.ts');
    const say = (words: string) => this.#log?.write(`${new Date().toISOString()} ${words}\n`);
    const keep = (film: AsyncIterable<Uint8Array>, sender: string) => this.#keep(film, sender, say);
    const listening = await listen(options, { title: options.title, keep, say });
    this.#at = { ...options, ...listening };
    say(`films are received at ${options.address}:${listening.port} as ${options.title}`);
  }

  /** Resolves when nothing is being kept any more. */
  async stop(): Promise<void> {
    await this.#at?.close();
    this.#at = null;
    await Promise.allSettled(this.#keeping);
  }

  async #keep(film: AsyncIterable<Uint8Array>, sender: string, say: (words: string) => void): Promise<void> {
    const kept = keepFilm(this.#store, film, sender).then(({ sha256, byteLength }) => {
      say(`a film from ${sender} is in the inbox: ${byteLength} bytes, ${sha256}`);
    });
    this.#keeping.add(kept);
    await kept.finally(() => this.#keeping.delete(kept));
  }
}
