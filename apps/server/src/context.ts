import type { Store } from '@bonewright/store';
import type { Demonstration } from './demonstration.ts';
import type { Live } from './live.ts';
import type { Receiver } from './receive/receiver.ts';

/** What the routes work on. */
export interface Context {
  readonly store: Store;
  readonly live: Live;
  readonly demonstration: Demonstration;
  readonly receiver: Receiver;
}
