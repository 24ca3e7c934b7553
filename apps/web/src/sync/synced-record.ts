/**
 * One record open on this device: a case, or the practice's own. Every entry is kept in the browser first, then sent; a reload, a lost network or a
 * server that is gone loses none. Events that other people record arrive by `refresh`.
 */
import { SCHEMA_VERSION } from '@bonewright/casebook';
import { Conflict, getEvents, postEvents, Refused, Unreachable } from './api.ts';
import { sendFilesOf, sendFilesOfAgain } from './files.ts';
import { tellOtherPages } from './other-pages.ts';
import {
  forgetRecord,
  keepEntries,
  keepRecorded,
  recordedHere,
  removeEntry,
  replaceEntry,
  waitingHere,
} from './outbox.ts';
import { keepOwnEntries, ownEntries } from './own-entries.ts';
import { randomId } from './random-id.ts';
import type { AnyRecord, RecordKind, Waiting } from './record-kind.ts';
import { emptyLog, queued, type RecordLog, received, stateOf, toSend, withWaiting } from './record-log.ts';
import { signer } from './signer.ts';

export type Saved =
  | { readonly kind: 'saved'; readonly at: string | null }
  | { readonly kind: 'sending'; readonly count: number }
  | { readonly kind: 'kept'; readonly count: number; readonly because: string }
  | { readonly kind: 'in-memory'; readonly count: number };

export interface Snapshot<T extends AnyRecord> {
  readonly state: T['state'];
  readonly found: 'looking' | 'here' | 'absent' | 'unreachable';
  readonly saved: Saved;
  /** Entries that the server would not take, with its reason. */
  readonly refused: readonly Waiting<T>[];
  readonly recorded: readonly T['recorded'][];
}

const RETRY_MS = [1000, 2000, 5000, 10_000, 20_000] as const;

export class SyncedRecord<T extends AnyRecord> {
  readonly #kind: RecordKind<T>;
  #log: RecordLog<T>;
  #found: Snapshot<T>['found'] = 'looking';
  #trouble: string | null = null;
  #keepsNothing = false;
  #lastSavedAt: string | null = null;
  #isSending = false;
  #attempt = 0;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #refreshing: Promise<void> = Promise.resolve();
  #snapshot: Snapshot<T>;
  readonly #ownIds: Set<string>;
  readonly #listeners = new Set<() => void>();
  readonly #ready: Promise<void>;

  /** A record that is new here is not asked for. */
  constructor(kind: RecordKind<T>, { isNew = false }: { readonly isNew?: boolean } = {}) {
    this.#kind = kind;
    this.#ownIds = ownEntries(kind.id);
    this.#log = emptyLog(kind);
    this.#snapshot = this.#look();
    this.#ready = isNew ? Promise.resolve() : this.#load();
    if (!isNew) void this.refresh().then(() => this.send());
  }

  /** Resolves when what this browser keeps has been read. */
  get opened(): Promise<void> {
    return this.#ready;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly snapshot = (): Snapshot<T> => this.#snapshot;

  /** Throws InputError, and records nothing, where an event says what no record may hold. */
  readonly append = (events: readonly T['entry'][]): void => {
    const at = new Date().toISOString();
    const entries = events.map((event): Waiting<T> => {
      const head = { id: randomId(), caseId: this.#kind.id, at, by: signer() };
      this.#kind.check({ ...event, ...head, schema: SCHEMA_VERSION, seq: 1 });
      return { ...event, ...head, refused: null };
    });
    for (const { id } of entries) this.#ownIds.add(id);
    keepOwnEntries(this.#kind.id, this.#ownIds);
    this.#become(queued(this.#log, entries));
    void this.#keepAndSend(entries);
  };

  /** Whether the event with this number was made in this tab. */
  readonly isOwn = (seq: number): boolean => {
    const event = this.#log.recorded[seq - 1] ?? toSend(this.#log)[seq - 1 - this.#log.recordedState.seq];
    return event !== undefined && this.#ownIds.has(event.id);
  };

  /** Reads what others recorded. Calls that overlap run one after the other. */
  refresh(): Promise<void> {
    return this.#oneByOne(() => this.#readOn());
  }

  /** The server's records were exchanged: what it says now takes the place of what it said before. */
  startOver(): Promise<void> {
    return this.#oneByOne(() => this.#readAnew());
  }

  /** Another page of this browser kept or sent entries. */
  async readAgain(): Promise<void> {
    this.#become(queued(this.#log, await waitingHere(this.#kind)));
    await this.refresh();
  }

  /** Sends a refused entry once more. */
  async tryAgain(entry: Waiting<T>): Promise<void> {
    const again = { ...entry, refused: null };
    this.#become(
      withWaiting(
        this.#log,
        this.#log.waiting.map((w) => (w.id === entry.id ? again : w)),
      ),
    );
    await this.#onDisk(replaceEntry(again));
    await sendFilesOfAgain(again);
    void this.send();
  }

  /** Takes a refused entry out for good. */
  async giveUp(entry: Waiting<T>): Promise<void> {
    this.#become(
      withWaiting(
        this.#log,
        this.#log.waiting.filter(({ id }) => id !== entry.id),
      ),
    );
    await this.#onDisk(removeEntry(entry.id));
  }

  /** Sends what waits; comes back by itself after a failure. */
  async send(): Promise<void> {
    if (this.#isSending) return;
    this.#isSending = true;
    clearTimeout(this.#retry);
    try {
      await this.#ready;
      let batchSize = Number.POSITIVE_INFINITY;
      for (let batch = toSend(this.#log); batch.length > 0; batch = toSend(this.#log)) {
        batchSize = await this.#sendSome(batch.slice(0, batchSize));
      }
      this.#attempt = 0;
      this.#trouble = null;
    } catch (error) {
      if (!(error instanceof Unreachable)) throw error;
      this.#trouble = error.message;
      this.#retry = setTimeout(() => void this.send(), RETRY_MS[Math.min(this.#attempt, RETRY_MS.length - 1)]);
      this.#attempt += 1;
    } finally {
      this.#isSending = false;
      this.#tell();
    }
  }

  /** One request. Returns how many entries the next may hold: one by one after a refusal, to find the one meant. */
  async #sendSome(batch: readonly T['known'][]): Promise<number> {
    try {
      await sendFilesOf(batch);
      const { seq } = await postEvents(this.#kind.address, batch);
      this.#lastSavedAt = new Date().toISOString();
      await this.#receive(batch);
      tellOtherPages(this.#kind.id);
      if (seq > this.#log.recordedState.seq) await this.refresh();
      return Number.POSITIVE_INFINITY;
    } catch (error) {
      if (error instanceof Conflict) {
        await this.refresh();
        return Number.POSITIVE_INFINITY;
      }
      if (!(error instanceof Refused)) throw error;
      if (batch.length === 1) await this.#markRefused(batch[0]?.id ?? '', error.message);
      return 1;
    }
  }

  async #markRefused(id: string, refused: string): Promise<void> {
    const entry = this.#log.waiting.find((waiting) => waiting.id === id);
    if (!entry) return;
    const marked = { ...entry, refused };
    this.#become(
      withWaiting(
        this.#log,
        this.#log.waiting.map((w) => (w.id === id ? marked : w)),
      ),
    );
    await this.#onDisk(replaceEntry(marked));
  }

  async #load(): Promise<void> {
    try {
      const [recorded, waiting] = await Promise.all([recordedHere(this.#kind), waitingHere(this.#kind)]);
      const log = received(this.#log, recorded);
      if (recorded.length > 0) this.#found = 'here';
      this.#become(queued(queued(withWaiting(log, []), waiting), log.waiting));
    } catch {
      this.#keepsNothing = true;
    }
  }

  #oneByOne(read: () => Promise<void>): Promise<void> {
    this.#refreshing = this.#refreshing.then(() => this.#ready).then(() => this.#reached(read));
    return this.#refreshing;
  }

  async #reached(read: () => Promise<void>): Promise<void> {
    try {
      await read();
      this.#found = this.#log.recorded.length + this.#log.waiting.length > 0 ? 'here' : 'absent';
    } catch (error) {
      if (!(error instanceof Unreachable || error instanceof Refused)) throw error;
      if (this.#found === 'looking') this.#found = 'unreachable';
    }
    this.#tell();
  }

  async #readOn(): Promise<void> {
    const last = this.#log.recorded.at(-1);
    const events = await getEvents(this.#kind, last ? last.seq - 1 : 0);
    // The last event known here must be the server's too, or its records were exchanged meanwhile.
    if (last === undefined || events?.[0]?.id === last.id) await this.#receive(events ?? []);
    else await this.#readAnew();
  }

  async #readAnew(): Promise<void> {
    const events = (await getEvents(this.#kind, 0)) ?? [];
    await this.#onDisk(forgetRecord(this.#kind.id));
    this.#log = withWaiting(emptyLog(this.#kind), this.#log.waiting);
    await this.#receive(events);
  }

  async #receive(events: readonly T['recorded'][]): Promise<void> {
    if (events.length === 0) return;
    this.#become(received(this.#log, events));
    await this.#onDisk(keepRecorded(events));
  }

  async #keepAndSend(entries: readonly Waiting<T>[]): Promise<void> {
    await this.#onDisk(keepEntries(entries));
    tellOtherPages(this.#kind.id);
    await this.send();
  }

  /** A browser that keeps nothing is said so in the head; the work goes on in memory. */
  async #onDisk(work: Promise<void>): Promise<void> {
    try {
      await work;
    } catch {
      this.#keepsNothing = true;
    }
  }

  #become(log: RecordLog<T>): void {
    this.#log = log;
    if (log.waiting.length > 0) this.#found = 'here';
    this.#tell();
  }

  #tell(): void {
    this.#snapshot = this.#look();
    for (const listener of this.#listeners) listener();
  }

  #look(): Snapshot<T> {
    return {
      state: stateOf(this.#log),
      found: this.#found,
      saved: this.#saved(),
      refused: this.#log.waiting.filter(({ refused }) => refused !== null),
      recorded: [...this.#log.recorded, ...toSend(this.#log)],
    };
  }

  #saved(): Saved {
    const count = toSend(this.#log).length;
    if (count === 0) return { kind: 'saved', at: this.#lastSavedAt ?? (this.#log.recordedState.changedAt || null) };
    if (this.#keepsNothing) return { kind: 'in-memory', count };
    if (this.#trouble !== null) return { kind: 'kept', count, because: this.#trouble };
    return { kind: 'sending', count };
  }
}
