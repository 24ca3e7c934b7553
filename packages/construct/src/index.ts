export { sectionFigure } from './figure/section-figure.ts';
export type * from './figure/view-figure.ts';
export { viewFigures } from './figure/view-figures.ts';
export * from './model/case-file.ts';
export { constructOf } from './model/construct-of.ts';
export * from './model/plan.ts';
