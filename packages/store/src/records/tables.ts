/** The tables, as kysely sees them. `events` and `attachments` are the record; `cases` is a fold of it and can be rebuilt. */
import type { Generated, Kysely, Transaction } from 'kysely';

export interface Tables {
  events: {
    position: Generated<number>;
    id: string;
    case_id: string;
    seq: number;
    received_at: string;
    /** The event as canonical JSON. */
    body: string;
    /** SHA-256 over the hash of the case's event before and this body. */
    hash: string;
  };
  cases: {
    id: string;
    seq: number;
    position: number;
    hash: string;
    is_demonstration: number;
    /** The board's line as JSON. */
    row: string;
    row_version: number;
  };
  attachments: {
    sha256: string;
    byte_length: number;
    received_at: string;
  };
  /** Things done once in this folder, so that they are not done again. */
  marks: {
    name: string;
    made_at: string;
  };
}

export type Database = Kysely<Tables>;
export type DatabaseTransaction = Transaction<Tables>;
