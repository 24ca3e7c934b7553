export { openExistingStore, openStore, verifyFolder } from './open-store.ts';
export { restore } from './sqlite/restore.ts';
export * from './store.ts';
