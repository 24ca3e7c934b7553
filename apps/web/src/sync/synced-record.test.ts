/** The record against a server that misbehaves; in Node there is no IndexedDB, so these pages keep everything in memory. */
import { type CaseEvent, checkEvent, SCHEMA_VERSION } from '@bonewright/casebook';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { HARE_OPENED } from './hare-opened.ts';
import type { NewEvent } from './new-event.ts';
import { caseKind } from './record-kind.ts';
import type { CaseRecord } from './records.ts';
import { SyncedRecord } from './synced-record.ts';

const CASE = 'case-0001';
const opening: NewEvent = HARE_OPENED;
const note = (text: string): NewEvent => ({ kind: 'note-added', payload: { text, stage: null } });
const noteOf = (event: CaseEvent): string => (event.kind === 'note-added' ? event.payload.text : event.kind);

/** A server that records in order, refuses what it is told to, and can be unplugged before or after it has recorded. */
class Server {
  recorded: CaseEvent[] = [];
  refuse: string | null = null;
  unplugged: 'no' | 'before' | 'after' = 'no';

  readonly fetch = async (path: string, request: RequestInit = {}): Promise<Response> => {
    if (this.unplugged === 'before') throw new TypeError('unplugged');
    if (request.method !== 'POST') {
      const after = Number(new URL(path, 'http://here').searchParams.get('after'));
      return Response.json({ events: this.recorded.filter(({ seq }) => seq > after) });
    }
    const { events }: { events: CaseEvent[] } = JSON.parse(String(request.body));
    const answer = this.#append(events);
    if (this.unplugged === 'after') throw new TypeError('unplugged');
    return answer;
  };

  record(event: NewEvent): void {
    const seq = this.recorded.length + 1;
    const head = { id: `theirs-${seq}-id`, caseId: CASE, at: '2026-11-24T22:41:00Z', by: 'them', seq };
    this.recorded.push(checkEvent({ ...event, ...head, schema: SCHEMA_VERSION }));
  }

  #append(events: readonly CaseEvent[]): Response {
    const fresh = events.filter(({ id, seq }) => this.recorded[seq - 1]?.id !== id);
    if (fresh.some(({ seq }, i) => seq !== this.recorded.length + 1 + i))
      return Response.json({ error: 'somebody was first' }, { status: 409 });
    if (fresh.some((event) => noteOf(event) === this.refuse))
      return Response.json({ error: 'not such a note' }, { status: 400 });
    this.recorded.push(...fresh);
    return Response.json({ seq: this.recorded.length });
  }
}

let server: Server;

beforeEach(() => {
  vi.useFakeTimers();
  server = new Server();
  vi.stubGlobal('fetch', server.fetch);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Long enough for every retry that is due within half a minute. */
const settle = () => vi.advanceTimersByTimeAsync(30_000);

async function openedRecord(): Promise<CaseRecord> {
  const record = new SyncedRecord(caseKind(CASE), { isNew: true });
  record.append([opening]);
  await settle();
  return record;
}

test('an entry is seen before it is sent, and recorded soon after', async () => {
  const record = await openedRecord();
  record.append([note('one')]);
  expect(record.snapshot().state.notes).toHaveLength(1);
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'one']);
  expect(record.snapshot().saved.kind).toBe('saved');
});

test('somebody else was first: both are recorded, theirs before mine', async () => {
  const record = await openedRecord();
  server.record(note('theirs'));
  record.append([note('mine')]);
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'theirs', 'mine']);
  expect(record.snapshot().state.notes.map(({ value }) => value.text)).toEqual(['theirs', 'mine']);
});

test('the server is away: entries wait, in order, and go when it is back', async () => {
  const record = await openedRecord();
  server.unplugged = 'before';
  record.append([note('one')]);
  record.append([note('two')]);
  await settle();
  expect(record.snapshot().saved).toMatchObject({ count: 2 });
  server.unplugged = 'no';
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'one', 'two']);
});

test('the answer is lost after it was recorded: nothing is recorded twice', async () => {
  const record = await openedRecord();
  server.unplugged = 'after';
  record.append([note('one')]);
  await settle();
  server.unplugged = 'no';
  server.record(note('theirs'));
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'one', 'theirs']);
  expect(record.snapshot().saved.kind).toBe('saved');
});

test('one entry of three is refused: the others are recorded, it is kept with the reason', async () => {
  const record = await openedRecord();
  server.refuse = 'bad';
  record.append([note('one'), note('bad'), note('three')]);
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'one', 'three']);
  const [refused] = record.snapshot().refused;
  expect(refused?.refused).toBe('not such a note');
  server.refuse = null;
  if (refused) await record.tryAgain(refused);
  await settle();
  expect(server.recorded.map(noteOf)).toEqual(['case-opened', 'one', 'three', 'bad']);
  expect(record.snapshot().refused).toEqual([]);
});

test("the server's records were exchanged: what it said before is forgotten", async () => {
  const record = await openedRecord();
  record.append([note('old')]);
  await settle();
  server.recorded = [];
  server.record(opening);
  await record.refresh();
  expect(record.snapshot().state.notes).toEqual([]);
  expect(record.snapshot().state.seq).toBe(1);
});

test('an entry that no record may hold is refused at the door', async () => {
  const record = await openedRecord();
  expect(() => record.append([note('')])).toThrow();
  expect(record.snapshot().state.notes).toEqual([]);
});
