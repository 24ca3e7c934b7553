/** A film open in its own thread. */
import { InputError } from '@bonewright/fault';
import type { Look, Scale, Trace, TraceRequest, Window } from '@bonewright/film';
import { type Remote, transfer, wrap } from 'comlink';
import type { FilmJobs } from './film.worker.ts';
import type { Answer, FilmFacts, Region } from './film-facts.ts';

const LONGEST_MS = 30_000;
const TOO_LONG = new InputError(
  `the film could not be read within ${LONGEST_MS / 1000} s`,
  '',
  'it may be damaged: export it again from where it came',
);

export class OpenFilm {
  readonly facts: FilmFacts;
  readonly #worker: Worker;
  readonly #jobs: Remote<FilmJobs>;

  private constructor(facts: FilmFacts, worker: Worker, jobs: Remote<FilmJobs>) {
    this.facts = facts;
    this.#worker = worker;
    this.#jobs = jobs;
  }

  /** Decodes a copy of the bytes. Throws InputError where they are no film, or take too long to read. */
  static async open(bytes: Uint8Array, name: string): Promise<OpenFilm> {
    const worker = new Worker(new URL('./film.worker.ts', import.meta.url), { type: 'module', name: `film ${name}` });
    const jobs = wrap<FilmJobs>(worker);
    const copy = Uint8Array.from(bytes);
    try {
      const answer = await Promise.race([jobs.open(transfer(copy, [copy.buffer]), name), failed(worker), tooLong()]);
      return new OpenFilm(answered(answer), worker, jobs);
    } catch (error) {
      worker.terminate();
      throw error;
    }
  }

  picture(look: Look): Promise<ImageBitmap> {
    return this.#jobs.picture(look);
  }

  /** With few pixels where there are many, and sooner. */
  sketch(look: Look): Promise<ImageBitmap> {
    return this.#jobs.sketch(look);
  }

  pictureFile(look: Look): Promise<Blob> {
    return this.#jobs.pictureFile(look);
  }

  windowOn(region: Region): Promise<Window> {
    return this.#jobs.windowOn(region);
  }

  /** Throws InputError where the request cannot be read. */
  async scale(calibration: TraceRequest['calibration']): Promise<Scale> {
    return answered(await this.#jobs.scale(calibration));
  }

  /** Throws InputError where the request cannot be read. */
  async trace(request: TraceRequest): Promise<Trace> {
    return answered(await this.#jobs.trace(request));
  }

  close(): void {
    this.#worker.terminate();
  }
}

function answered<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value;
  throw new InputError(answer.what, answer.path, answer.hint);
}

const tooLong = (): Promise<never> => new Promise((_, reject) => setTimeout(() => reject(TOO_LONG), LONGEST_MS));

function failed(worker: Worker): Promise<never> {
  return new Promise((_, reject) => {
    worker.addEventListener('error', ({ message }) => reject(new Error(`the film's thread failed: ${message}`)));
  });
}
