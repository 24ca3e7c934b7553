/** Entries and events in the browser's own database. */
import { database } from './database.ts';
import type { AnyRecord, AnyWaiting, RecordKind, Waiting } from './record-kind.ts';

/** In the order they were made. */
export async function waitingHere<T extends AnyRecord>({ id, ofThese }: RecordKind<T>): Promise<readonly Waiting<T>[]> {
  const db = await database();
  const rows = await db.getAllFromIndex('outbox', 'caseId', id);
  return ofThese(rows.sort((a, b) => a.order - b.order).map(({ order: _, ...entry }) => entry));
}

/** Every record that something waits for. */
export async function recordsWaiting(): Promise<string[]> {
  const db = await database();
  const rows = await db.getAll('outbox');
  return [...new Set(rows.map(({ caseId }) => caseId))];
}

let lastOrder = 0;

/** A number above every one given before, on this page and on earlier ones. */
function nextOrder(): number {
  lastOrder = Math.max(lastOrder + 1, Date.now() * 1000);
  return lastOrder;
}

/** Resolves when they are on disk. */
export async function keepEntries<T extends AnyRecord>(entries: readonly Waiting<T>[]): Promise<void> {
  const db = await database();
  const tx = db.transaction('outbox', 'readwrite', { durability: 'strict' });
  for (const entry of entries) void tx.store.put({ ...entry, order: nextOrder() });
  await tx.done;
}

export async function replaceEntry(entry: AnyWaiting): Promise<void> {
  const db = await database();
  const before = await db.get('outbox', entry.id);
  await db.put('outbox', { ...entry, order: before?.order ?? nextOrder() });
}

export async function removeEntry(id: string): Promise<void> {
  await (await database()).delete('outbox', id);
}

export async function recordedHere<T extends AnyRecord>({ id, isRecorded }: RecordKind<T>): Promise<T['recorded'][]> {
  const db = await database();
  return (await db.getAll('events', eventsOf(id))).filter(isRecorded);
}

/** What the server acknowledged or said: it waits no longer. One transaction, so that nothing is in both or in neither. */
export async function keepRecorded(events: readonly AnyRecord['recorded'][]): Promise<void> {
  const db = await database();
  const tx = db.transaction(['events', 'outbox'], 'readwrite');
  for (const event of events) {
    void tx.objectStore('events').put(event);
    void tx.objectStore('outbox').delete(event.id);
  }
  await tx.done;
}

/** Forgets what the server said of a record; what waits stays. */
export async function forgetRecord(id: string): Promise<void> {
  await (await database()).delete('events', eventsOf(id));
}

const eventsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);
