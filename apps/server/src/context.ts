import type { Store } from '@bonewright/store';
import type { Live } from './live.ts';

/** What the routes work on. */
export interface Context {
  readonly store: Store;
  readonly live: Live;
}
