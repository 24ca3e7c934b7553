/** What crosses between threads: an answer, or why there is none, in the words of bad input. */
import { InputError } from '@bonewright/fault';

export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly what: string; readonly path: string; readonly hint: string };

/** Does a job in a thread; only faults of ours are thrown. */
export async function answer<T>(job: () => T | Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await job() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { what, path, hint } = error;
    return { ok: false, what, path, hint };
  }
}

/** The value of an answer. Throws InputError where there is none. */
export function answered<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value;
  throw new InputError(answer.what, answer.path, answer.hint);
}

const LONGEST_MS = 30_000;

/** What the thread answers, or why it does not: it failed, or took longer than anything whole takes. */
export async function inTime<T>(worker: Worker, job: Promise<Answer<T>>, what: string): Promise<T> {
  const ends = new AbortController();
  const { signal } = ends;
  const failed = new Promise<never>((_, reject) => {
    const fault = ({ message }: ErrorEvent) => reject(new Error(`the thread of ${what} failed: ${message}`));
    worker.addEventListener('error', fault, { signal });
    const late = setTimeout(() => reject(tooLong(what)), LONGEST_MS);
    signal.addEventListener('abort', () => clearTimeout(late));
  });
  try {
    return answered(await Promise.race([job, failed]));
  } finally {
    ends.abort();
  }
}

const tooLong = (what: string) =>
  new InputError(
    `${what} could not be read within ${LONGEST_MS / 1000} s`,
    '',
    'it may be damaged: export it again from where it came',
  );
