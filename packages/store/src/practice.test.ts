/** The practice's own record keeps the promises that a case's does. */
import { join } from 'node:path';
import { checkPracticeEvent, PRACTICE, type PracticeEvent } from '@bonewright/casebook';
import { DatabaseSync } from '@photostructure/sqlite';
import { expect, onTestFinished, test } from 'vitest';
import { ConflictError, openStore, type Store, verifyFolder } from './index.ts';
import { freshFolder, note, opened } from './test/cases.ts';
import { onEveryDatabase, type Place } from './test/places.ts';

const A = 'case-aaaa';
const WIRE = { use: 'pin', diameterMm: 1, kind: 'smooth', material: 'steel-cold-worked' };

function entry(seq: number, kind: string, payload: unknown, by = 'T. Okafor'): PracticeEvent {
  const id = `practice-${by.replace(/\W/g, '')}-${seq}`;
  return checkPracticeEvent({ schema: 1, id, caseId: PRACTICE, seq, at: '2026-11-25T23:10:00Z', by, kind, payload });
}
const described = entry(1, 'stock-described', { itemId: 'wire 1.0', thing: WIRE, lowAt: 2 });
const received = (seq: number, amount: number, by?: string) =>
  entry(seq, 'stock-received', { itemId: 'wire 1.0', batch: 'A', amount, expires: null }, by);

/** Closed after the test. */
async function closing(opened: Promise<Store>): Promise<Store> {
  const store = await opened;
  onTestFinished(() => store.close());
  return store;
}

onEveryDatabase((newPlace) => {
  const opening = async (again?: Place) => {
    const place = again ?? (await newPlace());
    return { store: await closing(place.open()), place };
  };

  test('recorded beside the cases, read back word for word, each once, also after the store was closed', async () => {
    const { store, place } = await opening();
    await store.append([opened(A)]);
    const events = [described, received(2, 6)];
    expect(await store.practice.append(events)).toMatchObject({ seq: 2, added: 2 });
    expect(await store.practice.append(events)).toMatchObject({ seq: 2, added: 0 });
    await store.append([note(A, 2)]);
    const again = await opening(place);
    expect(await again.store.practice.read()).toEqual(events);
    expect(await again.store.practice.read(1)).toEqual([events[1]]);
    expect(await again.store.practice.append([received(3, 1)])).toMatchObject({ seq: 3, added: 1 });
    expect(await again.store.verify()).toEqual([]);
  });

  test('it is no case: not on the board, not read as one, not opened as one', async () => {
    const { store } = await opening();
    await store.practice.append([described]);
    expect(await store.list()).toEqual([]);
    expect(await store.read(PRACTICE)).toEqual([]);
    expect(() => opened(PRACTICE)).toThrow(/name of the practice/);
  });

  test('what others are told of it comes in the same order as the cases', async () => {
    const { store } = await opening();
    await store.append([opened(A)]);
    await store.practice.append([described]);
    await store.append([note(A, 2)]);
    const changes = await store.changesAfter(0, 10);
    expect(changes.map(({ caseId, seq }) => [caseId, seq])).toEqual([
      [A, 1],
      [PRACTICE, 1],
      [A, 2],
    ]);
  });

  test('somebody else was first: nothing is recorded, and what was missed comes back', async () => {
    const { store } = await opening();
    await store.practice.append([described, received(2, 6, 'R. Fenn')]);
    const mine = store.practice.append([received(2, 4)]);
    await expect(mine).rejects.toThrow(ConflictError);
    await expect(mine).rejects.toMatchObject({ seq: 2, missed: [received(2, 6, 'R. Fenn')] });
    expect(await store.practice.read()).toHaveLength(2);
  });

  test('an entry that says nothing is refused whole, the record is intact', async () => {
    const { store } = await opening();
    await expect(store.practice.append([received(1, 6)])).rejects.toThrow(/there is no wire 1.0/);
    expect(await store.practice.read()).toEqual([]);
  });

  test('a backup holds it, and taking the demonstration patients out leaves it', async () => {
    const { store, place } = await opening();
    await store.practice.append([described]);
    await store.append([opened(A, true)]);
    await store.removeDemonstration();
    const file = join(freshFolder(), 'monday.backup');
    await store.backup(file);
    const restored = await closing(place.openRestored(file));
    expect(await restored.practice.read()).toEqual([described]);
    expect(await restored.verify()).toEqual([]);
  });
});

test.each([
  [
    'a changed amount',
    `update events set body = replace(body, '"amount":6', '"amount":60') where case_id = 'practice'`,
    "the practice's record event 2",
  ],
  ['the last entry gone', `delete from events where case_id = 'practice' and seq = 2`, "the practice's record"],
  ['its place gone', 'delete from practice', "the practice's record"],
])('verify names what is damaged: %s', async (_, sql, where) => {
  const dir = freshFolder();
  const store = await closing(openStore(dir));
  await store.append([opened(A)]);
  await store.practice.append([described, received(2, 6)]);
  const file = new DatabaseSync(join(dir, 'records.sqlite'));
  file.exec(sql);
  file.close();
  const damage = await verifyFolder(dir);
  expect(damage).toContainEqual(expect.objectContaining({ what: 'record', where }));
  expect(damage.every((each) => each.where.startsWith("the practice's record"))).toBe(true);
});
