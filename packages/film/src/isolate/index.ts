/** Films decoded apart, in Node: a hostile file costs its own thread, for so long and with so much memory. */
import { Worker } from 'node:worker_threads';
import { InputError } from '@bonewright/fault';
import { type DecodeReply, filmOf } from '../decode/reply.ts';
import type { Film } from '../model/film.ts';

export interface Limits {
  readonly milliseconds: number;
  /** Of the whole process above what it held before, the file's own bytes included. */
  readonly bytes: number;
}

/** The largest film allowed takes 12 s on two slow cores; whoever waits 30 s for an answer must get one. */
export const FILM_LIMITS: Limits = { milliseconds: 20_000, bytes: 1.1 * 1024 ** 3 };

const WATCH_EVERY_MS = 50;
const HINT = 'the file may be damaged: export the film again from where it came';

/** Films take turns: memory is watched for the whole process, which could not tell two of them apart. */
let turn: Promise<unknown> = Promise.resolve();

/**
 * Decodes one film in a thread of its own, after those asked for before it.
 * @throws InputError as `decodeFilm` does, and where the film takes longer or more memory than `limits` allow.
 */
export function decodeIsolated(bytes: Uint8Array, name: string, limits: Limits = FILM_LIMITS): Promise<Film> {
  const film = turn.then(() => decodeApart(bytes, name, limits));
  turn = film.catch(() => undefined);
  return film;
}

async function decodeApart(bytes: Uint8Array, name: string, limits: Limits): Promise<Film> {
  const copy = new Uint8Array(bytes);
  const worker = new Worker(new URL('./start.mjs', import.meta.url), {
    workerData: { bytes: copy, name },
    transferList: [copy.buffer],
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: limits.bytes / 1024 ** 2 },
  });
  const stop = new AbortController();
  try {
    return filmOf(await Promise.race([reply(worker), memoryOrTimeOut(limits, stop.signal)]));
  } finally {
    stop.abort();
    await worker.terminate();
  }
}

function reply(worker: Worker): Promise<DecodeReply> {
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', (error: Error & { code?: string }) =>
      reject(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? tooMuchMemory() : error),
    );
    worker.once('exit', () => reject(new Error('the decoding thread ended without an answer')));
  });
}

/** `resourceLimits` bound the JavaScript heap alone; codecs and pixels live outside it, so the process is watched. */
function memoryOrTimeOut(limits: Limits, signal: AbortSignal): Promise<never> {
  const before = process.memoryUsage.rss();
  return new Promise((_, reject) => {
    const watch = setInterval(() => {
      if (process.memoryUsage.rss() - before > limits.bytes) reject(tooMuchMemory());
    }, WATCH_EVERY_MS);
    const clock = setTimeout(() => {
      reject(new InputError(`the film could not be read within ${limits.milliseconds / 1000} s`, '', HINT));
    }, limits.milliseconds);
    signal.addEventListener('abort', () => {
      clearInterval(watch);
      clearTimeout(clock);
    });
  });
}

const tooMuchMemory = (): InputError => new InputError('the film needs more memory than a film may', '', HINT);
