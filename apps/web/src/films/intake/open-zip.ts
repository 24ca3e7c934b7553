/** A ZIP open in its own thread. */
import type { ZipEntry } from '@bonewright/film';
import { type Remote, transfer, wrap } from 'comlink';
import { inTime } from '../engine/answer.ts';
import type { ZipJobs } from './zip.worker.ts';

export class OpenZip {
  readonly entries: readonly ZipEntry[];
  readonly #worker: Worker;
  readonly #jobs: Remote<ZipJobs>;

  private constructor(entries: readonly ZipEntry[], worker: Worker, jobs: Remote<ZipJobs>) {
    this.entries = entries;
    this.#worker = worker;
    this.#jobs = jobs;
  }

  /** The bytes move to the thread. Throws InputError where they cannot be listed, or hold too much. */
  static async open(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<OpenZip> {
    const worker = new Worker(new URL('./zip.worker.ts', import.meta.url), { type: 'module', name: `zip ${name}` });
    const jobs = wrap<ZipJobs>(worker);
    try {
      const opening = jobs.open(transfer(bytes, [bytes.buffer]), name);
      return new OpenZip(await inTime(worker, opening, name), worker, jobs);
    } catch (error) {
      worker.terminate();
      throw error;
    }
  }

  /** Throws InputError where the file cannot be unpacked. */
  unpack(entry: ZipEntry): Promise<Uint8Array> {
    return inTime(this.#worker, this.#jobs.unpack(entry), entry.name);
  }

  close(): void {
    this.#worker.terminate();
  }
}
