/** Several servers on one PostgreSQL: one order, each event once, every server hears of every change. */
import { setTimeout } from 'node:timers/promises';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { AwayError, ConflictError, DiskError, type News, openStore, type Store } from './index.ts';
import { chunks, freshFolder, note, opened, sha256, someBytes } from './test/cases.ts';
import { isWithoutPostgres, withPostgres } from './test/places.ts';

const A = 'case-aaaa';

describe.skipIf(isWithoutPostgres)('several servers on one PostgreSQL', () => {
  const postgres = withPostgres();

  async function servers(count: number): Promise<{ stores: Store[]; database: string }> {
    const database = await postgres().freshDatabase();
    const dir = freshFolder();
    // At once, on an empty database: one makes the tables, the others wait for them.
    const stores = await Promise.all(Array.from({ length: count }, () => openStore(dir, database)));
    onTestFinished(async () => {
      await Promise.all(stores.map((store) => store.close()));
    });
    return { stores, database };
  }

  test('append to one case at once: one number is given once, whoever was second is told what was missed', async () => {
    const { stores } = await servers(3);
    await stores[0]!.append([opened(A)]);
    const people = ['R. Fenn', 'T. Okafor', 'M. Hale'];
    const told = await Promise.all(stores.map((store, i) => appendAll(store, people[i] ?? '', 15)));
    const events = await stores[1]!.read(A);
    expect(events.map(({ seq }) => seq)).toEqual(Array.from({ length: 46 }, (_, i) => i + 1));
    for (const by of people) expect(events.filter((event) => event.by === by)).toHaveLength(by === 'R. Fenn' ? 16 : 15);
    expect(told.reduce((sum, conflicts) => sum + conflicts, 0)).toBeGreaterThan(0);
    expect(await stores[2]!.verify()).toEqual([]);
  });

  test('a reader that follows the order of recording misses nothing, however many write at once', async () => {
    const { stores } = await servers(4);
    const cases = Array.from({ length: 12 }, (_, i) => `case-follow-${i}`);
    let isWriting = true;
    const writing = Promise.all(
      cases.map(async (caseId, i) => {
        const store = stores[i % 3]!;
        await store.append([opened(caseId)]);
        for (let seq = 2; seq <= 12; seq++) await store.append([note(caseId, seq)]);
      }),
    ).finally(() => {
      isWriting = false;
    });
    const followed: string[] = [];
    let position = 0;
    const follow = async (): Promise<void> => {
      for (const change of await stores[3]!.changesAfter(position, 5)) {
        position = change.position;
        followed.push(`${change.caseId} ${change.seq}`);
      }
    };
    while (isWriting) await follow();
    await writing;
    while (position < (await stores[0]!.lastPosition())) await follow();
    expect(followed).toHaveLength(12 * 12);
    expect(new Set(followed).size).toBe(12 * 12);
  });

  test('every server hears of what another one recorded, of received films and of cases that went', async () => {
    const { stores } = await servers(2);
    const [here, there] = stores as [Store, Store];
    const heard: News[] = [];
    onTestFinished(there.watch((news) => heard.push(news)));
    await here.append([opened(A, true)]);
    await vi.waitFor(() => expect(heard).toEqual(['events']));
    const film = someBytes(3000);
    await here.putAttachment(chunks(film));
    await here.inbox.add({ sha256: sha256(film), sender: 'XRAY1', header: {} });
    await vi.waitFor(() => expect(heard).toEqual(['events', 'inbox']));
    await here.removeDemonstration();
    await vi.waitFor(() => expect(heard).toEqual(['events', 'inbox', 'cases']));
    expect(await there.list()).toEqual([]);
  });

  test('the connection that hears is lost: it is made again, and says that something may have been missed', async () => {
    const { stores, database } = await servers(2);
    const [here, there] = stores as [Store, Store];
    const heard: News[] = [];
    onTestFinished(there.watch((news) => heard.push(news)));
    const cut = `select pg_terminate_backend(pid) from pg_stat_activity where query like 'listen%'`;
    await postgres().run(database, cut);
    await here.append([opened(A)]);
    await vi.waitFor(() => expect(heard).toContain('events'), { timeout: 20_000 });
    heard.length = 0;
    await vi.waitFor(async () => {
      await here.append([note(A, (await here.read(A)).length + 1)]);
      expect(heard).toContain('events');
    });
  });
});

describe.skipIf(isWithoutPostgres)('PostgreSQL fails', () => {
  const postgres = withPostgres();

  async function oneServer(): Promise<{ store: Store; database: string }> {
    const database = await postgres().freshDatabase();
    const store = await openStore(freshFolder(), database);
    onTestFinished(() => store.close());
    await store.append([opened(A)]);
    return { store, database };
  }

  test('gone and back: said in words, what was acknowledged is there, and the same server goes on', async () => {
    const { store } = await oneServer();
    await postgres().crash();
    await expect(store.append([note(A, 2)])).rejects.toThrow(AwayError);
    await expect(store.read(A)).rejects.toThrow('the database does not answer');
    await postgres().startAgain();
    await vi.waitFor(() => store.append([note(A, 2)]), { timeout: 20_000 });
    expect(await store.read(A)).toHaveLength(2);
    expect(await store.verify()).toEqual([]);
  });

  test.each([
    ['53100', 'the disk of the database is full'],
    ['58030', 'the disk of the database does not answer as it should'],
  ])(
    'its disk (code %s): nothing of the batch is recorded, and it goes on when that is mended',
    async (code, words) => {
      const { store, database } = await oneServer();
      const body = `begin if new.seq = 3 then raise exception 'no' using errcode = '${code}'; end if; return new; end`;
      await postgres().run(database, `create function broken() returns trigger language plpgsql as $$ ${body} $$`);
      await postgres().run(
        database,
        'create trigger broken before insert on events for each row execute function broken()',
      );
      await expect(store.append([note(A, 2), note(A, 3)])).rejects.toThrow(new DiskError(words));
      expect(await store.read(A)).toHaveLength(1);
      await postgres().run(database, 'drop trigger broken on events');
      expect(await store.append([note(A, 2), note(A, 3)])).toMatchObject({ added: 2 });
    },
  );

  test('may be read only: said in words, and the records can still be read', async () => {
    const { store, database } = await oneServer();
    const name = database.split('?')[0]?.split('/').at(-1);
    await postgres().run(database, `alter database ${name} set default_transaction_read_only = on`);
    const reader = await openStore(freshFolder(), database);
    onTestFinished(() => reader.close());
    await expect(reader.append([note(A, 2)])).rejects.toThrow(new DiskError('the database may not be written'));
    expect(await reader.read(A)).toEqual(await store.read(A));
  });

  test.each([
    ['mysql://here/records', /not the address/],
    ['postgres://127.0.0.1:1/none', /cannot be reached/],
  ])('%s is refused in words', async (address, words) => {
    await expect(openStore(freshFolder(), address)).rejects.toMatchObject({ name: 'InputError', path: '--database' });
    await expect(openStore(freshFolder(), address)).rejects.toThrow(words);
  });
});

/** Appends notes one by one, numbering again after each conflict; how many conflicts there were. */
async function appendAll(store: Store, by: string, count: number): Promise<number> {
  let conflicts = 0;
  let seq = 2;
  for (let i = 0; i < count; ) {
    try {
      await store.append([{ ...note(A, seq, `${i}`, by), id: `${by.replace(/\W/g, '')}-note-${i}` }]);
      i += 1;
      seq += 1;
    } catch (error) {
      if (!(error instanceof ConflictError)) throw error;
      conflicts += 1;
      seq = error.seq + 1;
    }
    await setTimeout(0);
  }
  return conflicts;
}
