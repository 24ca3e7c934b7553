/** Makes the index of words anew from the lines that were carried over from another database. */
import { type BoardRow, namesOf, wordsOf } from '@bonewright/casebook';
import type { DatabaseTransaction } from '../records/tables.ts';
import type { SearchIndex } from './search-index.ts';

const PAGE = 500;

export async function indexAgain(tx: DatabaseTransaction, index: SearchIndex): Promise<void> {
  let after = '';
  while (true) {
    const cases = await tx
      .selectFrom('cases')
      .select(['id', 'position', 'row'])
      .where('id', '>', after)
      .orderBy('id')
      .limit(PAGE)
      .execute();
    const last = cases.at(-1);
    if (!last) return;
    const said = await textsOf(tx, after, last.id);
    for (const { id, position, row } of cases) {
      const patient: BoardRow = JSON.parse(row);
      const names = wordsOf(namesOf(patient));
      const words = new Set([...names, ...wordsOf((said.get(id) ?? []).join('\n'))]);
      await index.replace(tx, { caseId: id, before: position, position, names, said: [...words] });
    }
    after = last.id;
  }
}

async function textsOf(tx: DatabaseTransaction, after: string, last: string): Promise<Map<string, string[]>> {
  const lines = await tx
    .selectFrom('search_lines')
    .select(['case_id', 'text'])
    .where('case_id', '>', after)
    .where('case_id', '<=', last)
    .execute();
  const texts = new Map<string, string[]>();
  for (const { case_id: id, text } of lines) {
    const here = texts.get(id);
    if (here) here.push(text);
    else texts.set(id, [text]);
  }
  return texts;
}
