import { chartPaper } from './chart/chart-paper.ts';
import { dischargeSheet } from './course/discharge-sheet.ts';
import { finderThanks, referralBack, rescueReport } from './course/letters.ts';
import { releaseSheet } from './course/release-sheet.ts';
import type { DosePaperFacts } from './doses/dose-facts.ts';
import { DOSE_PAPERS } from './doses/dose-papers.ts';

/** Every paper that is made of a case's record alone, by name. */
export const CASE_PAPERS = {
  ...DOSE_PAPERS,
  chart: chartPaper,
  discharge: dischargeSheet,
  release: releaseSheet,
  'referral-back': referralBack,
  'rescue-report': rescueReport,
  'finder-thanks': finderThanks,
} as const satisfies Record<string, (facts: DosePaperFacts) => Promise<Uint8Array>>;

export const CASE_PAPER_NAMES = Object.keys(CASE_PAPERS) as [keyof typeof CASE_PAPERS, ...(keyof typeof CASE_PAPERS)[]];
