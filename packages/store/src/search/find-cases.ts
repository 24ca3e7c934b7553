/** Search over everything recorded: the cases that hold every word, and the line of each in which most of them stand. */
import { askedWords, type BoardRow, foundIn, namesOf } from '@bonewright/casebook';
import type { Engine } from '../engine.ts';
import type { Database } from '../records/tables.ts';
import type { Found } from '../store.ts';

/** Patients known by these words first, then cases in which they were said; the last changed first in each. */
export async function findCases(
  engine: Engine,
  question: string,
  limit: number,
  only: readonly string[] | null,
): Promise<Found[]> {
  const asked = askedWords(question);
  if (asked.length === 0) return [];
  const ids = only ?? (await idsOf(engine, asked, limit));
  if (ids.length === 0) return [];
  const rows = await rowsOf(engine.db, ids);
  const lines = await linesOf(engine.db, ids);
  const found = ids.flatMap((id) => {
    const row = rows.get(id);
    const said = lines.get(id) ?? [];
    if (!row || (only !== null && !holdsAll(said, asked))) return [];
    const isCalledSo = foundIn(namesOf(row), asked).length === asked.length;
    return [{ row, line: isCalledSo ? null : bestLine(said, asked), asked }];
  });
  return found.slice(0, limit);
}

async function idsOf({ db, index }: Engine, asked: readonly string[], limit: number): Promise<string[]> {
  const named = await index.find(db, asked, 'names', limit);
  const said = named.length < limit ? await index.find(db, asked, 'said', limit) : [];
  return [...new Set([...named, ...said])].slice(0, limit);
}

const holdsAll = (lines: readonly Line[], asked: readonly string[]): boolean =>
  foundIn(lines.map(({ text }) => text).join('\n'), asked).length === asked.length;

async function rowsOf(db: Database, ids: readonly string[]): Promise<Map<string, BoardRow>> {
  const found = await db.selectFrom('cases').select(['id', 'row']).where('id', 'in', ids).execute();
  return new Map(found.map(({ id, row }) => [id, JSON.parse(row)]));
}

interface Line {
  readonly seq: number;
  readonly text: string;
}

async function linesOf(db: Database, ids: readonly string[]): Promise<Map<string, Line[]>> {
  const found = await db
    .selectFrom('search_lines')
    .select(['case_id', 'seq', 'text'])
    .where('case_id', 'in', ids)
    .orderBy('case_id')
    .orderBy('seq', 'desc')
    .execute();
  const lines = new Map<string, Line[]>();
  for (const { case_id: id, seq, text } of found) addTo(lines, id, { seq, text });
  return lines;
}

function addTo(lines: Map<string, Line[]>, id: string, line: Line): void {
  const here = lines.get(id);
  if (here) here.push(line);
  else lines.set(id, [line]);
}

/** The line that holds most of what was asked; the later of two that hold as much. */
function bestLine(lines: readonly Line[], asked: readonly string[]): Line | null {
  let best: Line | null = null;
  let most = 0;
  for (const line of lines) {
    const count = foundIn(line.text, asked).length;
    if (count <= most) continue;
    [best, most] = [line, count];
    if (count === asked.length) break;
  }
  return best;
}
