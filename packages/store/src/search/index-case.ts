/** Keeps what is found by words in step with the records, in the transaction that records. */
import { type CaseState, namesOf, type RecordedEvent, searchLine, wordsOf } from '@bonewright/casebook';
import { insertRows } from '../records/all-tables.ts';
import type { DatabaseTransaction } from '../records/tables.ts';
import type { SearchIndex } from './search-index.ts';

/** Where a case stands in the order of recording: before these events, and with them. */
interface Places {
  readonly before: number;
  readonly position: number;
}

export async function indexCase(
  tx: DatabaseTransaction,
  index: SearchIndex,
  state: CaseState,
  fresh: readonly RecordedEvent[],
  places: Places,
): Promise<void> {
  const { caseId } = state;
  await insertRows(
    tx,
    'search_lines',
    fresh.map((event) => ({ case_id: caseId, seq: event.seq, text: searchLine(event).replaceAll('\0', ' ') })),
  );
  const lines = await tx.selectFrom('search_lines').select('text').where('case_id', '=', caseId).execute();
  const names = state.patient ? wordsOf(namesOf(state.patient.value)) : [];
  const said = new Set([...names, ...wordsOf(lines.map(({ text }) => text).join('\n'))]);
  await index.replace(tx, { caseId, ...places, names, said: [...said] });
}
