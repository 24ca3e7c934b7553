export { restore } from './backup/restore.ts';
export { openExistingStore, openStore, verifyFolder } from './open-store.ts';
export * from './people/people-store.ts';
export { canonicalJson, chainHash } from './records/canonical.ts';
export * from './store.ts';
