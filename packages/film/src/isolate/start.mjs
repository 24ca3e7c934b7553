/** Starts the decoding thread: the loader of a TypeScript program reaches no further than its first thread. */
import { register } from 'tsx/esm/api';

register();
await import('./decode-worker.ts');
