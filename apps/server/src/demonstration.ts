/** The invented patients: made once in a folder's life, in a thread of their own, while the pages already open. */
import { loadDemonstration, removeFromPractice } from '@bonewright/demo';
import type { Store } from '@bonewright/store';
import type { Live } from './live.ts';

const OFFERED = 'demonstration-offered';

export class Demonstration {
  readonly #store: Store;
  readonly #live: Live;
  #making: { readonly stop: AbortController; readonly done: Promise<void> } | null = null;

  constructor(store: Store, live: Live) {
    this.#store = store;
    this.#live = live;
  }

  /** Patients are still being made. */
  get isPreparing(): boolean {
    return this.#making !== null;
  }

  /** Makes the patients, unless this folder has had them: one that was emptied stays empty. Cut short, it is done again. */
  async offer(): Promise<void> {
    if (await this.#store.isMarked(OFFERED)) return;
    await this.reset();
  }

  /** Takes the patients out and makes them anew. Resolves when the making has begun; says how many were taken out. */
  async reset(): Promise<number> {
    const removed = await this.remove();
    const stop = new AbortController();
    const done = this.#make(stop.signal).finally(() => {
      if (this.#making?.stop === stop) this.#making = null;
      this.#live.reset();
    });
    this.#making = { stop, done };
    return removed;
  }

  /** Takes the patients out, for good; says how many. Real patients are not touched. */
  async remove(): Promise<number> {
    await this.stop();
    const removed = await this.#store.removeDemonstration();
    await removeFromPractice(this.#store, new Date().toISOString());
    this.#live.reset();
    return removed;
  }

  /** Notes that this folder begins without them. */
  decline(): Promise<void> {
    return this.#store.mark(OFFERED);
  }

  /** Resolves when nothing is being made any more. */
  async stop(): Promise<void> {
    this.#making?.stop.abort();
    await this.#making?.done;
  }

  async #make(signal: AbortSignal): Promise<void> {
    try {
      await loadDemonstration(this.#store, { now: new Date(), signal, onCase: () => this.#live.changed() });
    } catch (error) {
      if (signal.aborted) return;
      process.stderr.write(`the demonstration: ${String(error)}\n`);
    }
    await this.#store.mark(OFFERED);
  }
}
