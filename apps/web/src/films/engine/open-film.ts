/** A film open in its own thread. */
import type {
  ExpectedRod,
  FoundRod,
  Look,
  NoRod,
  PinSearch,
  Region,
  Scale,
  Trace,
  TraceRequest,
  Window,
} from '@bonewright/film';
import { transfer } from 'comlink';
import { answered, inTime } from './answer.ts';
import type { FilmFacts, PartWish, SquareWish } from './film-facts.ts';
import { type FilmThread, takeThread } from './film-thread.ts';

export class OpenFilm {
  readonly facts: FilmFacts;
  readonly #thread: FilmThread;

  private constructor(facts: FilmFacts, thread: FilmThread) {
    this.facts = facts;
    this.#thread = thread;
  }

  /** Decodes a copy of the bytes. Throws InputError where they are no film, or take too long to read. */
  static async open(bytes: Uint8Array, name: string): Promise<OpenFilm> {
    const thread = takeThread();
    const copy = new Uint8Array(bytes);
    try {
      const opening = thread.jobs.open(transfer(copy, [copy.buffer]), name);
      return new OpenFilm(await inTime(thread.worker, opening, name), thread);
    } catch (error) {
      thread.worker.terminate();
      throw error;
    }
  }

  /** Of the file. */
  sha256(): Promise<string> {
    return this.#thread.jobs.fileHash();
  }

  part(wish: PartWish): Promise<ImageBitmap> {
    return this.#thread.jobs.part(wish);
  }

  pictureFile(look: Look): Promise<Blob> {
    return this.#thread.jobs.pictureFile(look);
  }

  windowOn(region: Region): Promise<Window> {
    return this.#thread.jobs.windowOn(region);
  }

  /** A new film's file. Throws InputError where the corners or the size cannot be those of a film. */
  async squared(wish: SquareWish): Promise<Uint8Array> {
    return answered(await this.#thread.jobs.squared(wish));
  }

  /** Throws InputError where the request cannot be read. */
  async scale(calibration: TraceRequest['calibration']): Promise<Scale> {
    return answered(await this.#thread.jobs.scale(calibration));
  }

  /** Throws InputError where the request cannot be read. */
  async trace(request: TraceRequest): Promise<Trace> {
    return answered(await this.#thread.jobs.trace(request));
  }

  /** Rods near where they are expected, in their order. */
  pins(expected: readonly ExpectedRod[], search: PinSearch): Promise<readonly (FoundRod | NoRod)[]> {
    return this.#thread.jobs.pins(expected, search);
  }

  close(): void {
    this.#thread.worker.terminate();
  }
}
