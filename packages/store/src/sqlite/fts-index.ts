/** Search by SQLite's FTS5: an index of words without their text, numbered by the place of each case's last change. */
import { sql } from 'kysely';
import type { SearchIndex } from '../search/search-index.ts';

export const ftsIndex: SearchIndex = {
  async create(db) {
    // Words come folded and apart (`wordsOf`); the tokenizer only splits at blanks. Short beginnings have their own lists.
    await sql`create virtual table search_words using fts5(names, said, content = '', contentless_delete = 1,
      detail = column, prefix = '1 2 3', tokenize = 'ascii')`.execute(db);
  },
  async replace(tx, { before, position, names, said }) {
    await sql`delete from search_words where rowid = ${before}`.execute(tx);
    await sql`insert into search_words (rowid, names, said)
      values (${position}, ${names.join(' ')}, ${said.join(' ')})`.execute(tx);
  },
  async forgetDemonstration(tx) {
    const marked = tx.selectFrom('cases').select('position').where('is_demonstration', '=', 1);
    await sql`delete from search_words where rowid in (${marked})`.execute(tx);
  },
  async find(db, asked, where, limit) {
    const all = asked.map((word) => `"${word}" *`).join(' AND ');
    const { rows } = await sql<{ id: string }>`
      select cases.id from search_words join cases on cases.position = search_words.rowid
      where search_words match ${`{${where}} : (${all})`} order by search_words.rowid desc limit ${limit}`.execute(db);
    return rows.map(({ id }) => id);
  },
};
