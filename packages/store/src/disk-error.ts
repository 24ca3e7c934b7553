import { DiskError } from './store.ts';

const WORDS: readonly [RegExp, string][] = [
  [/ENOSPC|database or disk is full/, 'the disk is full'],
  [/EDQUOT/, 'the space allowed on this disk is used up'],
  [/EROFS|EACCES|EPERM|readonly database/, 'the disk or folder may not be written'],
  [/EIO\b|disk I\/O error/, 'the disk does not answer as it should'],
];

/** The same error, as a DiskError where the disk is to blame. SQLite names some faults by their message only. */
export function diskError(error: unknown): unknown {
  const message = error instanceof Error ? error.message : '';
  const words = WORDS.find(([pattern]) => pattern.test(message))?.[1];
  return words === undefined ? error : new DiskError(words, { cause: error });
}
