/** The tables, as kysely sees them. `events` and `attachments` are the record; `cases` is a fold of it and can be rebuilt. */
import type { Generated, Kysely, Transaction } from 'kysely';
import type { PeopleTables } from '../people/people-tables.ts';

export interface Tables extends PeopleTables {
  events: {
    position: Generated<number>;
    id: string;
    /** PRACTICE for the practice's own record. */
    case_id: string;
    seq: number;
    received_at: string;
    /** The event as canonical JSON. */
    body: string;
    /** SHA-256 over the hash of the record's event before and this body. */
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
    /** 1 where nothing more is expected of the case. */
    ended: number;
    /** As on the cage card. */
    number: string;
  };
  /** Each event of a case as words, for search; made from the event. */
  search_lines: {
    case_id: string;
    seq: number;
    text: string;
  };
  /** The last event of the practice's own record; no row before the first. */
  practice: {
    id: string;
    seq: number;
    position: number;
    hash: string;
  };
  attachments: {
    sha256: string;
    byte_length: number;
    received_at: string;
  };
  /** Films that an X-ray machine sent; their files are attachments. Without an outcome they wait for a case. */
  received_films: {
    sha256: string;
    /** The name the machine gave of itself. */
    sender: string;
    received_at: string;
    /** What the film's header says, as JSON. */
    header: string;
    outcome: 'matched' | 'set aside' | null;
    /** The case it went to, or why it was set aside. */
    detail: string | null;
    settled_at: string | null;
  };
  /** Things done once in this folder, so that they are not done again. */
  marks: {
    name: string;
    made_at: string;
  };
}

export type Database = Kysely<Tables>;
export type DatabaseTransaction = Transaction<Tables>;
