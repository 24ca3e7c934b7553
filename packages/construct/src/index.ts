export {
  type Advice,
  type AsPlaced,
  asPlaced,
  type Distance,
  type FoundAt,
  findPin,
  type InTheatre,
  inPlanNumbers,
  isAsPlanned,
  type Landmark,
  type PlacedPin,
  placedFromFilm,
  placeFrom,
} from './as-placed/index.ts';
export { assess, assessConstruct, evaluateNominal, type SampleOptions } from './assess.ts';
export { type BarShape, type BenchResult, type BenchTest, benchTest, type Reading } from './bench-test/bench-test.ts';
export { exportFrames } from './export-frames.ts';
export { sectionFigure } from './figure/section-figure.ts';
export type * from './figure/view-figure.ts';
export { viewFigures } from './figure/view-figures.ts';
export { type FirstDescription, firstDescription } from './first-description.ts';
export { callusModulus, type Healing } from './healing/callus.ts';
export { frameShare, mayComeOff, type Stage, type StageLoad, takeDown } from './healing/take-down.ts';
export { demandOf, eventOf, unionWeeks, unionWeeksId } from './loads/demand.ts';
export { classOf } from './loads/species.ts';
export { drawnMargins } from './margins/drawn-margins.ts';
export * from './model/case-file.ts';
export { constructOf } from './model/construct-of.ts';
export * from './model/plan.ts';
export { marginVerdict } from './plan-of.ts';
export { readCase } from './read-case.ts';
export { type RankOptions, rank, rankWith } from './search/index.ts';
export { RULES, type Rule, type RuleName } from './strength/rules.ts';
export { tissueAt } from './to-frame/layout.ts';
export { frameFacts } from './to-frame/masses.ts';
export { type Improvement, improvements, type WhatIf, whatIfs } from './what-if/index.ts';
export { directionWords } from './words/direction-words.ts';
