export type { Curve } from './curve.ts';
export { defineSet, type Entry, type Source, type Status } from './entry.ts';
export { curve, entries, entry, value } from './registry.ts';
