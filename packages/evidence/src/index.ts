export { defineSet, type Entry, type Source, type Status } from './entry.ts';
export { entries, entry, value } from './registry.ts';
