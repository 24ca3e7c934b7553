/** Starts the sheet's thread: the loader of a TypeScript program reaches no further than its first thread. */
// biome-ignore lint/correctness/noUndeclaredDependencies: the runner of the whole checkout, listed at its root
import { register } from 'tsx/esm/api';

register();
await import('./print.ts');
