/**
 * What a store of records promises, whichever database is below it. An event is acknowledged when it is on disk;
 * nothing recorded is changed or dropped, but for demonstration patients, who can be taken out whole.
 */
import type { Readable } from 'node:stream';
import type { BoardRow, CaseEvent, PracticeEvent, RecordedEvent, RecordedPracticeEvent } from '@bonewright/casebook';
import type { PeopleStore } from './people/people-store.ts';
import type { AnyEvent } from './records/record-kind.ts';

export interface Appended {
  /** The number of the record's last event. */
  readonly seq: number;
  /** The place of the record's last change in the order of everything recorded here. */
  readonly position: number;
  /** How many of the events were new; sending the same events again records nothing twice. */
  readonly added: number;
}

export interface Change {
  readonly position: number;
  /** PRACTICE for the practice's own record. */
  readonly caseId: string;
  readonly seq: number;
}

export interface Attachment {
  readonly sha256: string;
  readonly byteLength: number;
}

/** A film that an X-ray machine sent and that belongs to no case yet. */
export interface ReceivedFilm extends Attachment {
  readonly receivedAt: string;
  /** The name the machine gave of itself. */
  readonly sender: string;
  /** What the film's header says, as in the film itself. */
  readonly header: Readonly<Record<string, string>>;
}

export type FilmOutcome = { readonly matched: string } | { readonly setAside: string };

/** Films sent by machines, waiting for somebody to say whose they are. */
export interface Inbox {
  /** Lists a film whose file is kept already. One that comes again waits again, whatever was done with it before. */
  add(film: Pick<ReceivedFilm, 'sha256' | 'sender' | 'header'>): Promise<void>;
  /** The films that wait, the last received first. */
  waiting(): Promise<ReceivedFilm[]>;
  /**
   * Takes a film off the list: it went to the case with that id, or was set aside for that reason. Its file stays.
   * False where no such film waits; throws InputError where there is no such case.
   */
  settle(sha256: string, outcome: FilmOutcome): Promise<boolean>;
}

/** What the practice keeps once and not in a case: one sequence of events, with the same promises as a case. */
export interface PracticeRecord {
  /** As `append` of a case. */
  append(events: readonly PracticeEvent[]): Promise<Appended>;
  /** The events after number `after`, in order. */
  read(after?: number): Promise<RecordedPracticeEvent[]>;
}

export interface PutOptions {
  /** Refuse a file larger than this. */
  readonly largestBytes?: number;
  /** Refuse a file whose bytes have another hash: it was damaged on the way. */
  readonly expectedSha256?: string;
  /** Looks at the whole file, at that path, before it is kept; whatever it throws refuses the file. */
  readonly inspect?: (path: string) => Promise<void>;
}

/** Something verify found: what is damaged, where, and how it was seen. */
export interface Damage {
  readonly what: 'database' | 'record' | 'attachment';
  readonly where: string;
  readonly because: string;
}

/** Which page of the board: cases that go on or that ended, after the place `before` where there is one. */
export interface BoardWanted {
  readonly ended: boolean;
  readonly before: number | null;
  readonly limit: number;
  /** Of these cases; null for all. */
  readonly only: readonly string[] | null;
}

export interface BoardPage {
  /** The last changed first. */
  readonly rows: BoardRow[];
  /** `before` of the next page; null on the last. */
  readonly more: number | null;
  /** How many cases go on, and how many ended. */
  readonly live: number;
  readonly ended: number;
}

/** A case in which something was found. */
export interface Found {
  readonly row: BoardRow;
  /** The event in which it stands, as words; null where the patient itself is so called. */
  readonly line: { readonly seq: number; readonly text: string } | null;
  /** What was looked for, as it is compared: without capitals, accents and what stands between. */
  readonly asked: readonly string[];
}

/** What changed: events were recorded, the list of received films, or whole cases came or went. */
export const NEWS = ['events', 'inbox', 'cases'] as const;
export type News = (typeof NEWS)[number];

export interface Store {
  /**
   * Records events that continue one case; resolves when they are on disk. Events already recorded are passed over.
   * Throws ConflictError where somebody else's events came first, InputError where an event cannot be recorded.
   */
  append(events: readonly CaseEvent[]): Promise<Appended>;
  /** The events of a case after number `after`, in order; none for a case that is not here. */
  read(caseId: string, after?: number): Promise<RecordedEvent[]>;
  /** The same events, each as its stored text: JSON, not read or checked. */
  readText(caseId: string, after?: number): Promise<string[]>;
  /** The board: one line a case, the last changed first. */
  list(): Promise<BoardRow[]>;
  /** One page of the board. */
  board(wanted: BoardWanted): Promise<BoardPage>;
  /** The last of the case numbers that begin so; not all of them. */
  numbersBeginning(start: string): Promise<string[]>;
  /** The cases in which every word of the question begins a word of what was recorded; at most `limit`, of the cases `only`. */
  search(question: string, limit: number, only: readonly string[] | null): Promise<Found[]>;
  /** What was recorded after that place, in order, at most `limit`. */
  changesAfter(position: number, limit: number): Promise<Change[]>;
  /** Hears of every change soon after it is recorded, on whichever server; returns how to stop. */
  watch(listener: (news: News) => void): () => void;
  /** The place of the newest change; 0 before the first. */
  lastPosition(): Promise<number>;
  /** Keeps a file by its hash; resolves when it is on disk. Throws InputError where it is too large, empty or damaged. */
  putAttachment(bytes: AsyncIterable<Uint8Array>, options?: PutOptions): Promise<Attachment>;
  /** The file with that hash; null where there is none. Throws where it should be there and is not whole. */
  getAttachment(sha256: string): Promise<(Attachment & { readonly bytes: Readable }) | null>;
  readonly practice: PracticeRecord;
  readonly inbox: Inbox;
  readonly people: PeopleStore;
  /** Takes out every demonstration patient and no other; says how many. */
  removeDemonstration(): Promise<number>;
  /** Notes that something was done once in this folder. */
  mark(name: string): Promise<void>;
  isMarked(name: string): Promise<boolean>;
  /** Reads every record and every attachment and checks each against its hash. */
  verify(): Promise<Damage[]>;
  /**
   * Writes everything into one file, while the store is in use; whole or not at all. Says which attachments were
   * damaged already and so could not be taken in.
   */
  backup(file: string): Promise<Damage[]>;
  close(): Promise<void>;
}

/** Somebody else's events came first: `missed` holds them; read them and number the new ones after `seq`. */
export class ConflictError extends Error {
  override readonly name = 'ConflictError';
  readonly seq: number;
  readonly missed: readonly AnyEvent[];

  constructor(seq: number, missed: readonly AnyEvent[]) {
    super(`the record already has ${seq} events`);
    this.seq = seq;
    this.missed = missed;
  }
}

/** The disk took nothing: what was recorded before stands, this was not recorded. `message` says why, in words. */
export class DiskError extends Error {
  override readonly name = 'DiskError';
}

/** The database does not answer. What was under way may have been recorded; sending it again records nothing twice. */
export class AwayError extends Error {
  override readonly name = 'AwayError';
}
