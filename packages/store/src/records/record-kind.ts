/** What the store has to know of a kind of record (a case, the practice's own) to append to it. */
import type { DatabaseTransaction } from './tables.ts';

/** The last event of a record; all zero before the first. */
export interface Head {
  readonly seq: number;
  readonly position: number;
  readonly hash: string;
}

export const NO_HEAD: Head = { seq: 0, position: 0, hash: '' };

/** What the store reads of any event. */
export interface AnyEvent {
  readonly id: string;
  readonly caseId: string;
  readonly seq: number;
  readonly kind: string;
}

/** What the store reads of any fold. */
export interface AnyState {
  readonly seq: number;
  readonly setAside: readonly { readonly event: AnyEvent; readonly because: string }[];
}

interface Added<E> {
  readonly fresh: readonly E[];
  readonly before: Head;
}

/** E is a new event, R one that is recorded, perhaps by a newer version, S the fold. */
export interface RecordKind<E extends R, R extends AnyEvent, S extends AnyState> {
  /** The event in a record. Throws where it is none. */
  readonly read: (json: unknown) => R;
  readonly fold: (events: readonly R[]) => S;
  readonly apply: (state: S, event: R) => S;
  readonly headOf: (tx: DatabaseTransaction, id: string) => Promise<Head>;
  /** Writes what is kept of the record beside its events; `fresh` were just added after `before`. */
  readonly write: (tx: DatabaseTransaction, state: S, head: Head, added: Added<E>) => Promise<void>;
  /** Throws InputError where these events need something that is not here. */
  readonly requireReady: (tx: DatabaseTransaction, fresh: readonly E[], after: S) => Promise<void>;
}
