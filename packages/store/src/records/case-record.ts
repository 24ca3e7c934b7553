/** The record of a case, and what is kept of it for the board and for search. */
import {
  applyEvent,
  boardRow,
  type CaseEvent,
  type CaseState,
  filesNamed,
  foldCase,
  type RecordedEvent,
  readEvent,
} from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { indexCase } from '../search/index-case.ts';
import type { SearchIndex } from '../search/search-index.ts';
import { type Head, NO_HEAD, type RecordKind } from './record-kind.ts';
import type { DatabaseTransaction } from './tables.ts';

/** Raise when the board's line changes: older lines are then made again when the store opens. */
export const ROW_VERSION = 2;

export const caseRecord = (index: SearchIndex): RecordKind<CaseEvent, RecordedEvent, CaseState> => ({
  read: readEvent,
  fold: foldCase,
  apply: applyEvent,
  headOf: async (tx, id) => {
    const head = await tx
      .selectFrom('cases')
      .select(['seq', 'position', 'hash'])
      .where('id', '=', id)
      .executeTakeFirst();
    return head ?? NO_HEAD;
  },
  write: async (tx, state, head, { fresh, before }) => {
    await writeCase(tx, state, head);
    await indexCase(tx, index, state, fresh, { before: before.position, position: head.position });
  },
  requireReady: async (tx, fresh, { patient }) => {
    if (!patient) throw new InputError('the case has not been opened', 'events', 'send case-opened first');
    await requireAttachments(tx, fresh);
  },
});

async function requireAttachments(tx: DatabaseTransaction, events: readonly CaseEvent[]): Promise<void> {
  for (const { sha256, fileName } of events.flatMap(filesNamed)) {
    const kept = await tx.selectFrom('attachments').select('sha256').where('sha256', '=', sha256).executeTakeFirst();
    if (!kept) throw new InputError(`the file ${fileName} has not arrived`, 'payload.sha256', 'send the file first');
  }
}

/** Writes what the board needs of a case; also used to make it again. */
export async function writeCase(tx: DatabaseTransaction, state: CaseState, head: Head): Promise<void> {
  const row = boardRow(state);
  const line = {
    ...head,
    is_demonstration: state.patient?.value.demonstration ? 1 : 0,
    row: JSON.stringify(row),
    ended: row?.ended ? 1 : 0,
    number: row?.number ?? '',
    row_version: ROW_VERSION,
  };
  await tx
    .insertInto('cases')
    .values({ id: state.caseId, ...line })
    .onConflict((c) => c.column('id').doUpdateSet(line))
    .execute();
}
