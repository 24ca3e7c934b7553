/** Adds events to one record in one transaction: whole or not at all, in order, each once. */
import { InputError } from '@bonewright/fault';
import type { Engine } from '../engine.ts';
import { type Appended, ConflictError } from '../store.ts';
import { canonicalJson, chainHash } from './canonical.ts';
import type { RecentFolds } from './recent-folds.ts';
import type { AnyEvent, AnyState, Head, RecordKind } from './record-kind.ts';
import { recordedEvent } from './recorded-event.ts';
import type { DatabaseTransaction } from './tables.ts';

export async function append<E extends R, R extends AnyEvent, S extends AnyState>(
  { recording, announce }: Pick<Engine, 'recording' | 'announce'>,
  kind: RecordKind<E, R, S>,
  events: readonly E[],
  receivedAt: string,
  folds: RecentFolds<S>,
): Promise<Appended> {
  const [first] = events;
  if (!first) throw new InputError('there is no event to record', 'events', 'send at least one');
  for (const [i, event] of events.entries()) requireNext(event, first, i);
  return recording(async (tx) => {
    const head = await kind.headOf(tx, first.caseId);
    const fresh = await notYetRecorded(tx, kind, events, head);
    if (fresh.length === 0) return { seq: head.seq, position: head.position, added: 0 };
    const before = folds.find(first.caseId, head.hash) ?? (await foldRecorded(tx, kind, first.caseId));
    const state = foldOnto(kind, before, fresh);
    await kind.requireReady(tx, fresh, state);
    const newHead = await insert(tx, fresh, head, receivedAt);
    await kind.write(tx, state, newHead, { fresh, before: head });
    await announce(tx, 'events');
    folds.keep(first.caseId, newHead.hash, state);
    return { seq: newHead.seq, position: newHead.position, added: fresh.length };
  });
}

function requireNext(event: AnyEvent, first: AnyEvent, index: number): void {
  if (event.caseId !== first.caseId)
    throw new InputError('the events belong to different cases', `events.${index}.caseId`, 'send one case at a time');
  if (event.seq !== first.seq + index)
    throw new InputError(`seq ${event.seq} is out of order`, `events.${index}.seq`, 'number the events one by one');
}

/** Passes over events that are recorded already, word for word; anything else in their place is a conflict. */
async function notYetRecorded<E extends R, R extends AnyEvent, S extends AnyState>(
  tx: DatabaseTransaction,
  { read }: RecordKind<E, R, S>,
  events: readonly E[],
  head: Head,
): Promise<E[]> {
  const firstSeq = events[0]?.seq ?? 0;
  if (firstSeq > head.seq + 1) throw new ConflictError(head.seq, []);
  const recorded = (await bodies(tx, events[0]?.caseId ?? '', firstSeq)).map((body) => recordedEvent(body, read));
  const overlap = events.slice(0, recorded.length);
  const same = overlap.every((event, i) => canonicalJson(event) === canonicalJson(recorded[i]));
  if (same) return events.slice(recorded.length);
  throw new ConflictError(head.seq, recorded);
}

async function bodies(tx: DatabaseTransaction, caseId: string, fromSeq: number): Promise<string[]> {
  const rows = await tx
    .selectFrom('events')
    .select('body')
    .where('case_id', '=', caseId)
    .where('seq', '>=', fromSeq)
    .orderBy('seq')
    .execute();
  return rows.map(({ body }) => body);
}

async function foldRecorded<E extends R, R extends AnyEvent, S extends AnyState>(
  tx: DatabaseTransaction,
  { fold, read }: RecordKind<E, R, S>,
  caseId: string,
): Promise<S> {
  return fold((await bodies(tx, caseId, 1)).map((body) => recordedEvent(body, read)));
}

function foldOnto<E extends R, R extends AnyEvent, S extends AnyState>(
  { apply }: RecordKind<E, R, S>,
  before: S,
  fresh: readonly E[],
): S {
  const state = fresh.reduce(apply, before);
  const refused = state.setAside.find(({ event }) => event.seq > before.seq);
  if (refused)
    throw new InputError(
      `event ${refused.event.seq} cannot be recorded: ${refused.because}`,
      'events',
      'read the record again',
    );
  return state;
}

async function insert(tx: DatabaseTransaction, fresh: readonly AnyEvent[], head: Head, at: string): Promise<Head> {
  let last = head;
  for (const event of fresh) {
    await requireUnusedId(tx, event);
    const body = canonicalJson(event);
    const hash = chainHash(last.hash, body);
    const row = { id: event.id, case_id: event.caseId, seq: event.seq, received_at: at, body, hash };
    const { position } = await tx.insertInto('events').values(row).returning('position').executeTakeFirstOrThrow();
    last = { seq: event.seq, position, hash };
  }
  return last;
}

async function requireUnusedId(tx: DatabaseTransaction, { id }: AnyEvent): Promise<void> {
  const used = await tx.selectFrom('events').select('seq').where('id', '=', id).executeTakeFirst();
  if (used) throw new InputError(`the id ${id} belongs to another event`, 'events', 'draw a new id for every event');
}
