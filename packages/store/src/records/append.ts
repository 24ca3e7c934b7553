/** Adds events to one case in one transaction: whole or not at all, in order, each once. */
import { applyEvent, boardRow, type CaseEvent, type CaseState, foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { Engine } from '../engine.ts';
import { type Appended, ConflictError } from '../store.ts';
import { canonicalJson, chainHash } from './canonical.ts';
import type { RecentFolds } from './recent-folds.ts';
import { recordedEvent } from './recorded-event.ts';
import type { DatabaseTransaction } from './tables.ts';

/** Raise when the board's line changes: older lines are then made again when the store opens. */
export const ROW_VERSION = 1;

interface Head {
  readonly seq: number;
  readonly position: number;
  readonly hash: string;
}

export async function append(
  { recording, announce }: Pick<Engine, 'recording' | 'announce'>,
  events: readonly CaseEvent[],
  receivedAt: string,
  folds: RecentFolds,
): Promise<Appended> {
  const [first] = events;
  if (!first) throw new InputError('there is no event to record', 'events', 'send at least one');
  for (const [i, event] of events.entries()) requireNext(event, first, i);
  return recording(async (tx) => {
    const head = await headOf(tx, first.caseId);
    const fresh = await notYetRecorded(tx, events, head);
    if (fresh.length === 0) return { seq: head.seq, position: head.position, added: 0 };
    await requireAttachments(tx, fresh);
    const before = folds.find(first.caseId, head.hash) ?? (await foldRecorded(tx, first.caseId));
    const state = foldOnto(before, fresh);
    const newHead = await insert(tx, fresh, head, receivedAt);
    await writeCase(tx, state, newHead);
    await announce(tx, 'events');
    folds.keep(first.caseId, newHead.hash, state);
    return { seq: newHead.seq, position: newHead.position, added: fresh.length };
  });
}

function requireNext(event: CaseEvent, first: CaseEvent, index: number): void {
  if (event.caseId !== first.caseId)
    throw new InputError('the events belong to different cases', `events.${index}.caseId`, 'send one case at a time');
  if (event.seq !== first.seq + index)
    throw new InputError(`seq ${event.seq} is out of order`, `events.${index}.seq`, 'number the events one by one');
}

async function headOf(tx: DatabaseTransaction, caseId: string): Promise<Head> {
  const head = await tx
    .selectFrom('cases')
    .select(['seq', 'position', 'hash'])
    .where('id', '=', caseId)
    .executeTakeFirst();
  return head ?? { seq: 0, position: 0, hash: '' };
}

/** Passes over events that are recorded already, word for word; anything else in their place is a conflict. */
async function notYetRecorded(tx: DatabaseTransaction, events: readonly CaseEvent[], head: Head): Promise<CaseEvent[]> {
  const firstSeq = events[0]?.seq ?? 0;
  if (firstSeq > head.seq + 1) throw new ConflictError(head.seq, []);
  const recorded = (await bodies(tx, events[0]?.caseId ?? '', firstSeq)).map(recordedEvent);
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

async function requireAttachments(tx: DatabaseTransaction, events: readonly CaseEvent[]): Promise<void> {
  for (const event of events) {
    if (event.kind !== 'film-added') continue;
    const { sha256, fileName } = event.payload;
    const kept = await tx.selectFrom('attachments').select('sha256').where('sha256', '=', sha256).executeTakeFirst();
    if (!kept)
      throw new InputError(`the file of film ${fileName} has not arrived`, 'payload.sha256', 'send the file first');
  }
}

async function foldRecorded(tx: DatabaseTransaction, caseId: string): Promise<CaseState> {
  return foldCase((await bodies(tx, caseId, 1)).map(recordedEvent));
}

function foldOnto(before: CaseState, fresh: readonly CaseEvent[]): CaseState {
  const state = fresh.reduce(applyEvent, before);
  const refused = state.setAside.find(({ event }) => event.seq > before.seq);
  if (refused)
    throw new InputError(
      `event ${refused.event.seq} cannot be recorded: ${refused.because}`,
      'events',
      'read the case again',
    );
  if (!state.patient) throw new InputError('the case has not been opened', 'events', 'send case-opened first');
  return state;
}

async function insert(tx: DatabaseTransaction, fresh: readonly CaseEvent[], head: Head, at: string): Promise<Head> {
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

async function requireUnusedId(tx: DatabaseTransaction, { id }: CaseEvent): Promise<void> {
  const used = await tx.selectFrom('events').select('seq').where('id', '=', id).executeTakeFirst();
  if (used) throw new InputError(`the id ${id} belongs to another event`, 'events', 'draw a new id for every event');
}

/** Writes what the board needs of a case; also used to make it again. */
export async function writeCase(tx: DatabaseTransaction, state: CaseState, head: Head): Promise<void> {
  const line = {
    ...head,
    is_demonstration: state.patient?.value.demonstration ? 1 : 0,
    row: JSON.stringify(boardRow(state)),
    row_version: ROW_VERSION,
  };
  await tx
    .insertInto('cases')
    .values({ id: state.caseId, ...line })
    .onConflict((c) => c.column('id').doUpdateSet(line))
    .execute();
}
