/** A paper made in a thread of its own, for so long and no longer. */
import { Worker } from 'node:worker_threads';
import { InputError } from '@bonewright/fault';
import type { PaperName, SheetTitle, UsedBatch } from '@bonewright/sheet';

export interface SheetRequest {
  readonly paper: PaperName;
  /** As sent; checked in the thread. */
  readonly caseFile: unknown;
  readonly title: Omit<SheetTitle, 'version' | 'made'>;
  readonly used?: readonly UsedBatch[] | undefined;
  readonly version: string;
  readonly madeAt: string;
}

export type Printed =
  | { readonly pdf: Uint8Array<ArrayBuffer> }
  | { readonly refused: { readonly what: string; readonly path: string; readonly hint: string } };

const LONGEST_MS = 60_000;

/** The PDF of the construct in this case. Throws InputError for a case that cannot be read or holds no construct. */
export async function sheetInThread(request: SheetRequest): Promise<Uint8Array> {
  const worker = new Worker(new URL('./start.mjs', import.meta.url), { workerData: request, execArgv: [] });
  const clock = new AbortController();
  try {
    const printed = await Promise.race([reply(worker), tooLong(clock.signal)]);
    if ('pdf' in printed) return printed.pdf;
    const { what, path, hint } = printed.refused;
    throw new InputError(what, path, hint);
  } finally {
    clock.abort();
    await worker.terminate();
  }
}

function reply(worker: Worker): Promise<Printed> {
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the sheet’s thread ended without an answer')));
  });
}

function tooLong(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    const clock = setTimeout(() => reject(new Error('the sheet was not done in time')), LONGEST_MS);
    signal.addEventListener('abort', () => clearTimeout(clock));
  });
}
