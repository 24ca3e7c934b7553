export { implantRecord } from './implants/implant-record.ts';
export type { PageSize } from './paper/paper.ts';
export { planReport } from './report/plan-report.ts';
export type { SheetTitle, TheatreSheetFacts } from './theatre/facts.ts';
export { theatreSheet } from './theatre/theatre-sheet.ts';
