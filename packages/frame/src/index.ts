export { type SectionProperties, sectionProperties, shearCoefficient } from './assemble/section.ts';
export { peakStressMPa } from './assemble/stress.ts';
export type * from './model/compiled-frame.ts';
export type * from './model/frame-model.ts';
export { readFrame } from './model/read-frame.ts';
export { compileFrame } from './solve/compile-frame.ts';
export { solveFrame } from './solve/solve-frame.ts';
