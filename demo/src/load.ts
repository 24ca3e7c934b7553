/** Puts the demonstration into a store. Films, measurements and plans are made in a thread of their own: it takes seconds. */
import { on } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { Store } from '@bonewright/store';
import type { DemoCase } from './cases.ts';
import { countDown, stockThePractice } from './practice.ts';

export interface LoadOptions {
  readonly now: Date;
  /** Called each time a patient is in the store. */
  readonly onCase?: () => void;
  /** Stops the making; what is in the store by then stays. */
  readonly signal?: AbortSignal;
}

/**
 * Records the invented patients, each whole, one after another; says how many. Throws an AbortError where it was stopped,
 * an Error where a patient could not be made; the others are in the store then.
 */
export async function loadDemonstration(store: Store, { now, onCase, signal }: LoadOptions): Promise<number> {
  await stockThePractice(store, now);
  const faults: string[] = [];
  let count = 0;
  for await (const made of madeInThread(now, signal)) {
    if ('fault' in made) {
      faults.push(made.fault);
      continue;
    }
    for (const file of made.files) await store.putAttachment(inOnePiece(file));
    await store.append(made.events);
    await countDown(store, made.events[0]?.caseId ?? '');
    count += 1;
    onCase?.();
  }
  if (faults.length > 0) throw new Error(`not every patient could be made: ${faults.join('; ')}`);
  return count;
}

type Made = DemoCase | { readonly fault: string };

async function* madeInThread(now: Date, signal: AbortSignal | undefined): AsyncGenerator<Made> {
  const worker = new Worker(new URL('./thread/start.mjs', import.meta.url), {
    workerData: { now: now.toISOString() },
    execArgv: [],
  });
  try {
    const messages: AsyncIterable<Made[]> = on(worker, 'message', { close: ['exit'], ...(signal && { signal }) });
    for await (const cases of messages) yield* cases;
  } finally {
    await worker.terminate();
  }
}

async function* inOnePiece(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
