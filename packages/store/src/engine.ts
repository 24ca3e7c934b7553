/** What differs between the databases that a store may stand on; everything else is the same code. */
import type { Database, DatabaseTransaction } from './records/tables.ts';
import type { SearchIndex } from './search/search-index.ts';
import type { News } from './store.ts';

export interface Engine {
  readonly db: Database;
  /**
   * Runs work that records events. One at a time over every server on this database: what is seen of the order of
   * recording never gains anything before what was seen already.
   */
  recording<T>(work: (tx: DatabaseTransaction) => Promise<T>): Promise<T>;
  readonly index: SearchIndex;
  /** Tells every server on this database, once the transaction is through. */
  announce(tx: Database, news: News): Promise<void>;
  watch(listener: (news: News) => void): () => void;
  /** What the database itself finds wrong; empty where it is sound. */
  faults(): Promise<string[]>;
  /** Writes the records as of one moment to a new SQLite file, while they are in use. */
  copyTo(path: string): Promise<void>;
  close(): Promise<void>;
}

/** Who listens on this server. */
export class Watchers {
  readonly #listeners = new Set<(news: News) => void>();

  readonly watch = (listener: (news: News) => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  tell(news: News): void {
    for (const listener of this.#listeners) listener(news);
  }
}
