/** Threads for films; one is always kept started, so that a film never waits for it. */
import { type Remote, wrap } from 'comlink';
import type { FilmJobs } from './film.worker.ts';

export interface FilmThread {
  readonly worker: Worker;
  readonly jobs: Remote<FilmJobs>;
}

const NEXT_AFTER_MS = 1500;
let spare: FilmThread | null = null;

/** Starts the thread of the next film ahead of it. */
export function prepareThread(): void {
  spare ??= startThread();
}

/** A thread that no film lies in yet. */
export function takeThread(): FilmThread {
  const thread = spare ?? startThread();
  spare = null;
  setTimeout(prepareThread, NEXT_AFTER_MS);
  return thread;
}

function startThread(): FilmThread {
  const worker = new Worker(new URL('./film.worker.ts', import.meta.url), { type: 'module', name: 'film' });
  const jobs = wrap<FilmJobs>(worker);
  // A thread that cannot start says so to the film that is given to it.
  void jobs.ready().catch(() => undefined);
  return { worker, jobs };
}
