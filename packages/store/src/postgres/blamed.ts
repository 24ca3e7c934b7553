import { AwayError, DiskError } from '../store.ts';

/** By PostgreSQL's own codes (appendix A of its manual). */
const DISK: Record<string, string> = {
  '53100': 'the disk of the database is full',
  '25006': 'the database may not be written',
  '58030': 'the disk of the database does not answer as it should',
};
const AWAY = /^(08|57P0|53300|E(CONN|PIPE|NOENT|TIMEDOUT|HOST|NET|AI_))/;
const AWAY_WORDS = /Connection terminated|Client has encountered a connection error|timeout exceeded|not queryable/;

/** The same error, as a DiskError or an AwayError where the disk or the way to the database is to blame. */
export function blamed(error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  const code = 'code' in error ? String(error.code) : '';
  const disk = DISK[code];
  if (disk !== undefined) return new DiskError(disk, { cause: error });
  if (AWAY.test(code) || AWAY_WORDS.test(error.message))
    return new AwayError('the database does not answer', { cause: error });
  return error;
}
