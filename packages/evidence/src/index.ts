export type { Curve } from './curve.ts';
export {
  type Caution,
  DOSE_ROUTES,
  DOSE_USES,
  type DoseFigure,
  type DoseRoute,
  type DoseUse,
  type Drug,
  type Schedule,
  type Standing,
  type Strength,
} from './dose-figure.ts';
export { defineSet, type Entry, type Source, type Status } from './entry.ts';
export { doseFigure, doseFigures, drugOf, drugs, syringes, volumeLimits } from './formulary.ts';
export type { Syringe, VolumeLimit } from './injection.ts';
export { type LawQuestion, lawQuestions } from './law-questions.ts';
export { type OutcomeSeries, outcomeSeries } from './outcome-series.ts';
export { curve, entries, entry, value } from './registry.ts';
export { holeCurves } from './sets/hole-curves.ts';
