import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import fc from 'fast-check';
import { expect, onTestFinished, test } from 'vitest';
import type { Store } from '../index.ts';
import { chunks, event, filmAdded, note, opened, someBytes } from '../test/cases.ts';
import { onEveryDatabase, type Place } from '../test/places.ts';

const A = 'case-aaaa';
const B = 'case-bbbb';
const C = 'case-cccc';

/** It died, and both outcomes are written. */
const ending = (caseId: string, seq: number) => [
  event(caseId, seq, 'patient-outcome', { patient: 'died', words: 'In the night.' }),
  event(caseId, seq + 1, 'bone-outcome', { bone: 'unknown', words: 'Not looked at.' }),
];

onEveryDatabase((newPlace, database) => {
  async function withCases(): Promise<{ store: Store; place: Place }> {
    const place = await newPlace();
    const store = await place.open();
    onTestFinished(() => store.close());
    const film = someBytes(2000);
    await store.putAttachment(chunks(film));
    await store.append([opened(A), note(A, 2, 'Found under bramble by Mrs O’Hara, near the Zürich road.')]);
    await store.append([opened(B), event(B, 2, 'patient-amended', { species: 'hedgehog', name: 'Bramble' })]);
    await store.append([opened(C), filmAdded(C, 2, film), note(C, 3, 'Tetanus asked for.', 'T. Okafor')]);
    return { store, place };
  }
  const ids = async (store: Store, question: string) =>
    (await store.search(question, 20, null)).map(({ row }) => row.caseId);

  test.each([
    ['a number', '26-041', [C, B, A]],
    ['a part of one', '041', [C, B, A]],
    ['a species that was corrected', 'hedgehog', [B]],
    ['what it was called before', 'squirrel', [C, A, B]],
    ['a name before a word in a note', 'bramble', [B, A]],
    ['a finder, with or without its apostrophe', 'ohara', [A]],
    ['an accent left out', 'zurich', [A]],
    ['the beginning of a word, in capitals', 'TETA', [C]],
    ['a file', 'a.dcm', [C]],
    ['words of different events', 'squirrel tetanus', [C]],
    ['a word of the story', 'amended', [B]],
    ['words that no case holds all of', 'hedgehog tetanus', []],
    ['nothing', '  ', []],
    ['signs only', '"*():^-+', []],
  ])('%s: %s', async (_, question, expected) => {
    const { store } = await withCases();
    expect(await ids(store, question)).toEqual(expected);
  });

  test('says where it stands; where the patient is so called, that', async () => {
    const { store } = await withCases();
    const [called, said] = await store.search('bramble', 20, null);
    expect(called).toMatchObject({ row: { name: 'Bramble' }, line: null });
    expect(said?.line).toEqual({ seq: 2, text: expect.stringContaining('Found under bramble') });
    const [both] = await store.search('red tetanus', 20, null);
    expect(both?.line).toEqual({ seq: 3, text: 'Note: Tetanus asked for.' });
  });

  test('what is recorded is found at once, what is refused is not, and the last changed comes first', async () => {
    const { store } = await withCases();
    await store.append([note(A, 3, 'Ringlet')]);
    expect(await ids(store, 'ringlet')).toEqual([A]);
    expect(await ids(store, '26-041')).toEqual([A, C, B]);
    await expect(store.append([note(A, 3, 'Skipper')])).rejects.toThrow();
    expect(await ids(store, 'skipper')).toEqual([]);
  });

  test('whoever may open some cases only finds in those, and sees those on the board', async () => {
    const { store } = await withCases();
    const found = await store.search('26-041', 20, [A, B]);
    expect(found.map(({ row }) => row.caseId)).toEqual([A, B]);
    expect(await store.search('tetanus', 20, [A, B])).toEqual([]);
    expect(await store.search('26-041', 20, [])).toEqual([]);
    expect(await store.board({ ended: false, before: null, limit: 10, only: [B] })).toMatchObject({
      rows: [{ caseId: B }],
      live: 1,
      ended: 0,
    });
    expect(await store.board({ ended: false, before: null, limit: 10, only: [] })).toMatchObject({ rows: [], live: 0 });
  });

  test('patients of the demonstration that were taken out are not found', async () => {
    const { store } = await withCases();
    await store.append([opened('case-demo', true), note('case-demo', 2, 'Peacock')]);
    expect(await ids(store, 'peacock')).toEqual(['case-demo']);
    await store.removeDemonstration();
    expect(await ids(store, 'peacock')).toEqual([]);
  });

  test('a restored backup finds the same, and goes on', async () => {
    const { store, place } = await withCases();
    const file = join(place.dir, 'backup');
    await store.backup(file);
    const restored = await place.openRestored(file);
    onTestFinished(() => restored.close());
    for (const question of ['bramble', '26-041', 'tetanus', 'squirrel'])
      expect(await restored.search(question, 20, null)).toEqual(await store.search(question, 20, null));
    await restored.append([note(B, 3, 'Ringlet')]);
    expect(await ids(restored, 'ringlet bramble')).toEqual([B]);
  });

  test('at most so many, and a long note does not keep a case from being recorded', async () => {
    const { store } = await withCases();
    expect(await ids(store, '26-041')).toHaveLength(3);
    expect(await store.search('26-041', 2, null)).toHaveLength(2);
    const long = Array.from({ length: 3000 }, (_, i) => `w${i * 7919}`).join(' ');
    for (let seq = 3; seq < 9; seq++) await store.append([note(A, seq, long.slice(0, 20_000))]);
    expect(await ids(store, 'w7919')).toEqual([A]);
  });

  test('hostile questions find nothing or something, and harm nothing', async () => {
    const { store } = await withCases();
    const hostile = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 300 }),
      fc.constantFrom(
        `'; drop table events; --`,
        'names:*',
        '"a" OR "b"',
        `') | ('`,
        'NEAR(a b)',
        'a\0b',
        '\\',
        '%',
        '*',
      ),
    );
    await fc.assert(
      fc.asyncProperty(hostile, async (question) => {
        expect((await store.search(question, 20, null)).length).toBeLessThanOrEqual(20);
      }),
      { numRuns: 60 },
    );
    expect(await store.verify()).toEqual([]);
  });

  test('the board shows the patients that go on, those that ended by themselves, a page at a time', async () => {
    const { store } = await withCases();
    await store.append(ending(A, 3));
    const live = await store.board({ ended: false, before: null, limit: 1, only: null });
    expect(live).toMatchObject({ rows: [{ caseId: C }], live: 2, ended: 1 });
    const next = await store.board({ ended: false, before: live.more, limit: 1, only: null });
    expect(next).toMatchObject({ rows: [{ caseId: B }], more: null });
    expect(await store.board({ ended: true, before: null, limit: 10, only: null })).toMatchObject({
      rows: [{ caseId: A, ended: true }],
      more: null,
    });
    expect(await store.numbersBeginning('26-')).toEqual(['26-041', '26-041', '26-041']);
    expect(await store.numbersBeginning('25-')).toEqual([]);
  });

  test.runIf(database === 'SQLite')(
    'records of the version before are found and told apart when they are opened',
    async () => {
      const { store, place } = await withCases();
      await store.append(ending(A, 3));
      const before = await store.search('bramble', 20, null);
      await store.close();
      const file = new DatabaseSync(join(place.dir, 'records.sqlite'));
      file.exec(`drop table search_words; drop table search_lines; drop index cases_ended; drop index cases_number;
      drop index cases_row_version; alter table cases drop column ended; alter table cases drop column number;
      update cases set row_version = 1; delete from kysely_migration where name = '0005-board-and-search'`);
      file.close();
      const again = await place.open();
      onTestFinished(() => again.close());
      expect(await again.search('bramble', 20, null)).toEqual(before);
      expect(await again.board({ ended: true, before: null, limit: 10, only: null })).toMatchObject({
        rows: [{ caseId: A }],
      });
      expect(await again.numbersBeginning('26-')).toHaveLength(3);
      expect(await again.verify()).toEqual([]);
    },
  );
});
