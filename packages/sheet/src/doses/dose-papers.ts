import type { DosePaperFacts } from './dose-facts.ts';
import { doseSheet } from './dose-sheet.ts';
import { emergencySheet } from './emergency-sheet.ts';

/** Every paper of a case's signed doses, by name. */
export const DOSE_PAPERS = { doses: doseSheet, emergency: emergencySheet } as const satisfies Record<
  string,
  (facts: DosePaperFacts) => Promise<Uint8Array>
>;

export type DosePaperName = keyof typeof DOSE_PAPERS;
export const DOSE_PAPER_NAMES = Object.keys(DOSE_PAPERS) as [DosePaperName, ...DosePaperName[]];
