export type { PageSize } from './paper/paper.ts';
export type { SheetTitle, TheatreSheetFacts } from './theatre/facts.ts';
export { theatreSheet } from './theatre/theatre-sheet.ts';
