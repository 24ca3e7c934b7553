/** Puts the demonstration into a store. Films, measurements and plans are made in a thread of their own: it takes seconds. */
import { on } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { Store } from '@bonewright/store';
import type { DemoCase } from './cases.ts';

export interface LoadOptions {
  readonly now: Date;
  /** Called each time a patient is in the store. */
  readonly onCase?: () => void;
  /** Stops the making; what is in the store by then stays. */
  readonly signal?: AbortSignal;
}

/** Records the invented patients, each whole, one after another; says how many. Throws an AbortError where it was stopped. */
export async function loadDemonstration(store: Store, { now, onCase, signal }: LoadOptions): Promise<number> {
  let count = 0;
  for await (const { events, files } of madeInThread(now, signal)) {
    for (const file of files) await store.putAttachment(inOnePiece(file));
    await store.append(events);
    count += 1;
    onCase?.();
  }
  return count;
}

async function* madeInThread(now: Date, signal: AbortSignal | undefined): AsyncGenerator<DemoCase> {
  const worker = new Worker(new URL('./thread/start.mjs', import.meta.url), {
    workerData: { now: now.toISOString() },
    execArgv: [],
  });
  try {
    const messages: AsyncIterable<DemoCase[]> = on(worker, 'message', { close: ['exit'], ...(signal && { signal }) });
    for await (const cases of messages) yield* cases;
  } finally {
    await worker.terminate();
  }
}

async function* inOnePiece(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
