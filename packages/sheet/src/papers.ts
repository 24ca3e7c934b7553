import { implantRecord } from './implants/implant-record.ts';
import { planReport } from './report/plan-report.ts';
import type { TheatreSheetFacts } from './theatre/facts.ts';
import { theatreSheet } from './theatre/theatre-sheet.ts';

/** Every paper that is made of one construct, by name. */
export const PAPERS = { theatre: theatreSheet, report: planReport, implants: implantRecord } as const satisfies Record<
  string,
  (facts: TheatreSheetFacts) => Promise<Uint8Array>
>;

export type PaperName = keyof typeof PAPERS;
export const PAPER_NAMES = Object.keys(PAPERS) as [PaperName, ...PaperName[]];
