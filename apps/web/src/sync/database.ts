/** What this browser keeps of its own: entries not yet sent, what the server has said, and the files of films. */
import type { BoardRow } from '@bonewright/casebook';
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { AnyRecord, AnyWaiting } from './record-kind.ts';

export interface KeptFile {
  readonly sha256: string;
  readonly bytes: Uint8Array;
  readonly isSent: boolean;
  readonly usedAt: number;
}

export interface Board {
  readonly cases: readonly BoardRow[];
  readonly nextNumber: string;
  /** Where the next page of patients begins; null or absent where these are all. */
  readonly more?: number | null;
  /** How many patients go on and how many ended; absent where it is not known. */
  readonly live?: number;
  readonly ended?: number;
  /** The invented patients are being made. */
  readonly preparing: boolean;
}

interface Tables extends DBSchema {
  outbox: { key: string; value: AnyWaiting & { readonly order: number }; indexes: { caseId: string } };
  events: { key: [string, number]; value: AnyRecord['recorded'] };
  files: { key: string; value: KeptFile };
  board: { key: string; value: Board };
}

export type Database = IDBPDatabase<Tables>;

const NAME = 'bonewright';
const VERSION = 1;

let opened: Promise<Database> | null = null;

/** Rejects where the browser keeps nothing (a private window, a full disk): work goes on, but only in memory. */
export async function database(): Promise<Database> {
  opened ??= openDB<Tables>(NAME, VERSION, {
    upgrade(db) {
      db.createObjectStore('outbox', { keyPath: 'id' }).createIndex('caseId', 'caseId');
      db.createObjectStore('events', { keyPath: ['caseId', 'seq'] });
      db.createObjectStore('files', { keyPath: 'sha256' });
      db.createObjectStore('board');
    },
  });
  return opened;
}
