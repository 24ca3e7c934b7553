export { CASE_PAPER_NAMES, CASE_PAPERS } from './case-papers.ts';
export type { PageSize } from './paper/paper.ts';
export { PAPER_NAMES, PAPERS, type PaperName } from './papers.ts';
export type { SheetTitle, TheatreSheetFacts, UsedBatch } from './theatre/facts.ts';
