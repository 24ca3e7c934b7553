export * from './board-row.ts';
export * from './bundle/brought.ts';
export * from './bundle/manifest.ts';
export * from './case-file-of.ts';
export * from './case-state.ts';
export * from './chart-sitting.ts';
export * from './due.ts';
export { type ForeignEvent, PRACTICE, SCHEMA_VERSION } from './event-shape.ts';
export * from './events.ts';
export * from './files-named.ts';
export * from './film-sets.ts';
export * from './fold.ts';
export * from './frame-on.ts';
export * from './ids.ts';
export {
  type Admission,
  COURSES,
  type Course,
} from './kinds/admission.ts';
export type { Question } from './kinds/care.ts';
export { CHART_MARKS, CHECKLISTS, type ChartMark, type Checklist, type Reading } from './kinds/chart.ts';
export { type DoseGiven, type DoseInCase, earlierDoses } from './kinds/doses.ts';
export { OCCASIONS, type Occasion } from './kinds/film-occasion.ts';
export type { HandMeasurement } from './kinds/hand-measures.ts';
export * from './latest-mass.ts';
export * from './out-of-date.ts';
export { STAGES, type Stage } from './payloads.ts';
export * from './plan-summary.ts';
export * from './practice/events.ts';
export * from './practice/fold.ts';
export type * from './practice/kinds/medicines.ts';
export type * from './practice/kinds/stock.ts';
export { isOfStock } from './practice/kinds/stock.ts';
export * from './practice/practice-state.ts';
export * from './practice/stock/drawer-of.ts';
export * from './practice/stock/stock-words.ts';
export * from './practice/stock/uses.ts';
export * from './practice/story.ts';
export * from './release-gaps.ts';
export * from './rights/kinds.ts';
export * from './rights/rights.ts';
export * from './rights/roles.ts';
export * from './search-words.ts';
export * from './stage.ts';
export * from './story.ts';
export * from './weight-series.ts';
