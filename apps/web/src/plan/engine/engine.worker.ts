/** The mechanics off the page's thread: whole jobs in, whole answers out. */
import type { CaseFile, Construct, InTheatre, Ranking } from '@bonewright/construct';
import {
  asPlaced,
  assessConstruct,
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

const jobs = {
  quick: (file: CaseFile, construct: Construct) => answer(() => evaluateNominal(readCase(file), construct)),
  full: (file: CaseFile, construct: Construct) =>
    answer(() => {
      const patientCase = readCase(file);
      const { samples, seed } = patientCase;
      return assessConstruct(patientCase, construct, { samples, seed });
    }),
  rank: (file: CaseFile, onProgress: (soFar: Ranking) => void) => answer(() => rank(readCase(file), { onProgress })),
  whatIfs: (file: CaseFile, construct: Construct) => answer(() => whatIfs(readCase(file), construct)),
  asPlaced: (file: CaseFile, planned: Construct, theatre: InTheatre) =>
    answer(() => asPlaced(readCase(file), planned, theatre)),
  improvements: (file: CaseFile, construct: Construct) => answer(() => improvements(readCase(file), construct)),
};

export type Jobs = typeof jobs;

expose(jobs);
