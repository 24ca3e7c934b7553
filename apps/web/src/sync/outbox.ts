/** Entries and events in the browser's own database. */
import { isKnown, type RecordedEvent } from '@bonewright/casebook';
import type { Waiting } from './case-log.ts';
import { database } from './database.ts';

/** In the order they were made. */
export async function waitingHere(caseId: string): Promise<Waiting[]> {
  const db = await database();
  const rows = await db.getAllFromIndex('outbox', 'caseId', caseId);
  return rows.sort((a, b) => a.order - b.order).map(({ order: _, ...entry }) => entry);
}

/** Every case that something waits for. */
export async function casesWaiting(): Promise<string[]> {
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
export async function keepEntries(entries: readonly Waiting[]): Promise<void> {
  const db = await database();
  const tx = db.transaction('outbox', 'readwrite', { durability: 'strict' });
  for (const entry of entries) void tx.store.put({ ...entry, order: nextOrder() });
  await tx.done;
}

export async function replaceEntry(entry: Waiting): Promise<void> {
  const db = await database();
  const before = await db.get('outbox', entry.id);
  await db.put('outbox', { ...entry, order: before?.order ?? nextOrder() });
}

export async function removeEntry(id: string): Promise<void> {
  await (await database()).delete('outbox', id);
}

export async function recordedHere(caseId: string): Promise<RecordedEvent[]> {
  const db = await database();
  return db.getAll('events', casesEvents(caseId));
}

/** What the server acknowledged or said: it waits no longer. One transaction, so that nothing is in both or in neither. */
export async function keepRecorded(events: readonly RecordedEvent[]): Promise<void> {
  const db = await database();
  const tx = db.transaction(['events', 'outbox'], 'readwrite');
  for (const event of events) {
    void tx.objectStore('events').put(event);
    if (isKnown(event)) void tx.objectStore('outbox').delete(event.id);
  }
  await tx.done;
}

/** Forgets what the server said of a case; what waits stays. */
export async function forgetCase(caseId: string): Promise<void> {
  await (await database()).delete('events', casesEvents(caseId));
}

const casesEvents = (caseId: string): IDBKeyRange => IDBKeyRange.bound([caseId, 0], [caseId, Number.MAX_SAFE_INTEGER]);
