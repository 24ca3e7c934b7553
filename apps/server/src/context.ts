import type { Store } from '@bonewright/store';
import type { Demonstration } from './demonstration.ts';
import type { Live } from './live.ts';
import type { AccessLog } from './people/access-log.ts';
import type { Passwords } from './people/password.ts';
import type { Sessions } from './people/sessions.ts';
import type { Receiver } from './receive/receiver.ts';

/** What the routes work on. */
export interface Context {
  readonly store: Store;
  readonly live: Live;
  readonly demonstration: Demonstration;
  readonly receiver: Receiver;
  readonly people: { readonly sessions: Sessions; readonly passwords: Passwords; readonly log: AccessLog };
}
