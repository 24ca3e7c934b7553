export { DOSE_PAPER_NAMES, DOSE_PAPERS, type DosePaperName } from './doses/dose-papers.ts';
export type { PageSize } from './paper/paper.ts';
export { PAPER_NAMES, PAPERS, type PaperName } from './papers.ts';
export type { SheetTitle, TheatreSheetFacts } from './theatre/facts.ts';
