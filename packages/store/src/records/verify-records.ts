/** Checks every recorded event against its hash, its place in the chain and its columns, a page at a time. */
import { filesNamed, PRACTICE, type RecordedEvent, readEvent, readPracticeEvent } from '@bonewright/casebook';
import type { Damage } from '../store.ts';
import { chainHash } from './canonical.ts';
import { recordedEvent } from './recorded-event.ts';
import type { Database, Tables } from './tables.ts';

const PAGE = 500;

/** What is damaged, and every attachment's hash that a sound record names. */
export async function verifyRecords(db: Database): Promise<{ damage: Damage[]; named: Set<string> }> {
  const damage: Damage[] = [];
  const named = new Set<string>();
  const heads = new Map<string, { seq: number; hash: string }>();
  for await (const row of everyEvent(db)) {
    const before = heads.get(row.case_id) ?? { seq: 0, hash: '' };
    heads.set(row.case_id, { seq: row.seq, hash: row.hash });
    const because = faultOf(row, before, named);
    if (because) damage.push({ what: 'record', where: `${nameOf(row.case_id)} event ${row.seq}`, because });
  }
  const kept = await db.selectFrom('cases').select(['id', 'seq', 'hash']).execute();
  const keptOfPractice = await db.selectFrom('practice').select(['id', 'seq', 'hash']).execute();
  for (const line of [...kept, ...keptOfPractice]) {
    const head = heads.get(line.id);
    heads.delete(line.id);
    if (head?.seq === line.seq && head.hash === line.hash) continue;
    const because = `its last event should be ${line.seq} and is ${head?.seq ?? 'missing'}`;
    damage.push({ what: 'record', where: nameOf(line.id), because });
  }
  for (const id of heads.keys())
    damage.push({ what: 'record', where: nameOf(id), because: 'what is kept of its last event is missing' });
  return { damage, named };
}

const nameOf = (id: string): string => (id === PRACTICE ? "the practice's record" : `case ${id}`);

type EventRow = Pick<Tables['events'], 'case_id' | 'seq' | 'body' | 'hash' | 'id'>;

async function* everyEvent(db: Database): AsyncGenerator<EventRow> {
  let [caseId, seq] = ['', 0];
  while (true) {
    const page = await db
      .selectFrom('events')
      .select(['case_id', 'seq', 'body', 'hash', 'id'])
      .where((e) => e.or([e('case_id', '>', caseId), e.and([e('case_id', '=', caseId), e('seq', '>', seq)])]))
      .orderBy('case_id')
      .orderBy('seq')
      .limit(PAGE)
      .execute();
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    [caseId, seq] = [last.case_id, last.seq];
  }
}

function faultOf(row: EventRow, before: { seq: number; hash: string }, named: Set<string>): string | null {
  if (row.seq !== before.seq + 1) return `the events between ${before.seq} and it are missing`;
  if (chainHash(before.hash, row.body) !== row.hash) return 'its text does not have its hash';
  const event = row.case_id === PRACTICE ? recordedEvent(row.body, readPracticeEvent) : caseEvent(row.body, named);
  if (event.id !== row.id || event.caseId !== row.case_id || event.seq !== row.seq)
    return 'its text and its columns differ';
  return null;
}

function caseEvent(body: string, named: Set<string>): RecordedEvent {
  const event = recordedEvent(body, readEvent);
  for (const { sha256 } of filesNamed(event)) named.add(sha256);
  return event;
}
