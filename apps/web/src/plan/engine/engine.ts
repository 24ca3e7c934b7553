/**
 * Workers of our own origin, each started when first needed: quick figures while the hand moves, full ones with
 * spread, what-ifs, and the search. None waits for another.
 */
import type { CaseFile } from '@bonewright/construct';
import { type Remote, wrap } from 'comlink';
import type { Jobs } from './engine.worker.ts';

export type Role = 'quick' | 'full' | 'what-if' | 'search';

export interface Engine {
  /**
   * The job's answer, or null where that worker was stopped before it came. A case is sent to a worker once: `sent` is
   * null where that worker has it already.
   */
  readonly ask: <T>(role: Role, file: CaseFile, job: Job<T>) => Promise<T | null>;
  readonly stop: (role: Role) => void;
  readonly close: () => void;
}

type Job<T> = (jobs: Remote<Jobs>, sent: CaseFile | null) => Promise<T>;

interface Running {
  /** The case that the worker has. */
  file: CaseFile | null;
  readonly jobs: Remote<Jobs>;
  readonly stopped: Promise<null>;
  readonly stop: () => void;
}

export function startEngine(): Engine {
  const running = new Map<Role, Running>();
  const stop = (role: Role) => {
    running.get(role)?.stop();
    running.delete(role);
  };
  const worker = (role: Role): Running => {
    const ready = running.get(role) ?? startWorker(role);
    running.set(role, ready);
    return ready;
  };
  return {
    ask: (role, file, job) => {
      const ready = worker(role);
      const sent = ready.file === file ? null : file;
      ready.file = file;
      return Promise.race([job(ready.jobs, sent), ready.stopped]);
    },
    stop,
    close: () => [...running.keys()].forEach(stop),
  };
}

function startWorker(role: Role): Running {
  const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module', name: role });
  let end: (stopped: null) => void = () => {};
  const stopped = new Promise<null>((resolve, reject) => {
    end = resolve;
    worker.addEventListener('error', ({ message }) => reject(new Error(`the mechanics do not run here: ${message}`)));
  });
  return {
    file: null,
    jobs: wrap<Jobs>(worker),
    stopped,
    stop: () => {
      worker.terminate();
      end(null);
    },
  };
}
