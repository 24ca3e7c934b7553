/** Search by PostgreSQL's tsvector: the same words, kept by its inverted index. */
import { sql } from 'kysely';
import type { SearchIndex } from '../search/search-index.ts';

export const tsvectorIndex: SearchIndex = {
  async create(db) {
    await sql`create table search_words (case_id text collate "C" primary key, position bigint not null,
      names tsvector not null, said tsvector not null)`.execute(db);
    await sql`create index search_words_names on search_words using gin (names)`.execute(db);
    await sql`create index search_words_said on search_words using gin (said)`.execute(db);
    await sql`create index search_words_position on search_words (position)`.execute(db);
  },
  async replace(tx, { caseId, position, names, said }) {
    // Words come folded and apart (`wordsOf`): no dictionary is asked, so that both databases find the same.
    await sql`insert into search_words (case_id, position, names, said)
      values (${caseId}, ${position}, array_to_tsvector(${names}), array_to_tsvector(${said}))
      on conflict (case_id) do update
      set position = excluded.position, names = excluded.names, said = excluded.said`.execute(tx);
  },
  async forgetDemonstration(tx) {
    const marked = tx.selectFrom('cases').select('id').where('is_demonstration', '=', 1);
    await sql`delete from search_words where case_id in (${marked})`.execute(tx);
  },
  async find(db, asked, where, limit) {
    const all = asked.map((word) => `'${word}':*`).join(' & ');
    const { rows } = await sql<{ case_id: string }>`
      select case_id from search_words where ${sql.ref(where)} @@ ${all}::tsquery
      order by position desc limit ${limit}`.execute(db);
    return rows.map((row) => row.case_id);
  },
};
