import type { DosePaperFacts } from './dose-facts.ts';
import { doseSheet } from './dose-sheet.ts';
import { emergencySheet } from './emergency-sheet.ts';

/** Every paper of a case's signed doses, by name. */
export const DOSE_PAPERS = { doses: doseSheet, emergency: emergencySheet } as const satisfies Record<
  string,
  (facts: DosePaperFacts) => Promise<Uint8Array>
>;
