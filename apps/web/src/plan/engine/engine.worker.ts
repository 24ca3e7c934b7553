/** The mechanics off the page's thread: whole jobs in, whole answers out. */
import type { Case, CaseFile, Construct, InTheatre, LoadName, Ranking } from '@bonewright/construct';
import {
  asPlaced,
  assessConstruct,
  drawnMargins,
  evaluateNominal,
  improvements,
  rank,
  readCase,
  whatIfs,
} from '@bonewright/construct';
import { faultLine, InputError } from '@bonewright/fault';
import { expose } from 'comlink';

/** A bad input comes back as its line of text; a fault of ours is thrown on. */
export interface Answer<T> {
  readonly value: T | null;
  readonly why: string | null;
}

function answer<T>(job: () => T): Answer<T> {
  try {
    return { value: job(), why: null };
  } catch (error) {
    if (error instanceof InputError) return { value: null, why: faultLine(error) };
    throw error;
  }
}

/** The case that was sent last, read once. */
let kept: { readonly file: CaseFile; read: Case | null } | null = null;

/** Null: the one that was sent before. */
function caseOf(sent: CaseFile | null): Case {
  if (sent) kept = { file: sent, read: null };
  if (!kept) throw new Error('no case was sent to this worker');
  kept.read ??= readCase(kept.file);
  return kept.read;
}

type Sent = CaseFile | null;

const jobs = {
  quick: (sent: Sent, construct: Construct) => answer(() => evaluateNominal(caseOf(sent), construct)),
  full: (sent: Sent, construct: Construct) =>
    answer(() => {
      const patientCase = caseOf(sent);
      const { samples, seed } = patientCase;
      return assessConstruct(patientCase, construct, { samples, seed });
    }),
  /** The margin of every trial behind the full figures of one load. */
  trials: (sent: Sent, construct: Construct, load: LoadName) =>
    answer(() => {
      const patientCase = caseOf(sent);
      const { samples, seed } = patientCase;
      return drawnMargins(patientCase, construct, { count: samples, seed }).map((margins) => margins[load]);
    }),
  rank: (sent: Sent, onProgress: (soFar: Ranking) => void) => answer(() => rank(caseOf(sent), { onProgress })),
  whatIfs: (sent: Sent, construct: Construct) => answer(() => whatIfs(caseOf(sent), construct)),
  asPlaced: (sent: Sent, planned: Construct, theatre: InTheatre) =>
    answer(() => asPlaced(caseOf(sent), planned, theatre)),
  improvements: (sent: Sent, construct: Construct) => answer(() => improvements(caseOf(sent), construct)),
};

export type Jobs = typeof jobs;

expose(jobs);
