import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ConflictError, type Store } from './index.ts';
import { chunks, event, filmAdded, note, opened, sha256, someBytes } from './test/cases.ts';
import { onEveryDatabase, type Place } from './test/places.ts';

const A = 'case-aaaa';
const B = 'case-bbbb';

onEveryDatabase((newPlace) => {
  async function withStore(use: (store: Store, place: Place) => Promise<void>): Promise<void> {
    const place = await newPlace();
    const store = await place.open();
    await use(store, place);
    expect(await store.verify()).toEqual([]);
    await store.close();
  }

  describe('events', () => {
    test('what was appended is read back word for word, also after the store was closed', () =>
      withStore(async (store, place) => {
        const events = [opened(A), note(A, 2, 'ﬁrst – ½ “quoted” \u0000 🦔'), note(A, 3)];
        expect(await store.append(events)).toMatchObject({ seq: 3, added: 3 });
        expect(await store.read(A)).toEqual(events);
        const again = await place.open();
        expect(await again.read(A)).toEqual(events);
        expect(await again.read(A, 2)).toEqual([events[2]]);
        await again.close();
      }));

    test('sending the same events again records nothing twice, also when the batch goes on', () =>
      withStore(async (store) => {
        const events = [opened(A), note(A, 2)];
        await store.append(events);
        expect(await store.append(events)).toMatchObject({ seq: 2, added: 0 });
        expect(await store.append([...events, note(A, 3)])).toMatchObject({ seq: 3, added: 1 });
        expect(await store.append([note(A, 2)])).toMatchObject({ seq: 3, added: 0 });
        expect(await store.read(A)).toHaveLength(3);
      }));

    test('two people write the same number: the first is kept, the second is told what was missed', () =>
      withStore(async (store) => {
        await store.append([opened(A)]);
        const mine = note(A, 2, 'mine', 'R. Fenn');
        const theirs = note(A, 2, 'theirs', 'T. Okafor');
        const both = await Promise.allSettled([store.append([mine]), store.append([theirs])]);
        const [kept] = await store.read(A, 1);
        expect([mine, theirs]).toContainEqual(kept);
        expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
        expect(both.find(({ status }) => status === 'rejected')).toMatchObject({ reason: { seq: 2, missed: [kept] } });
        const again = kept?.by === 'R. Fenn' ? note(A, 3, 'theirs', 'T. Okafor') : note(A, 3, 'mine', 'R. Fenn');
        await store.append([again]);
        expect(foldCase(await store.read(A)).notes.map(({ value, by }) => [by, value.text])).toEqual(
          expect.arrayContaining([
            ['R. Fenn', 'mine'],
            ['T. Okafor', 'theirs'],
          ]),
        );
      }));

    test('a conflict inside a batch records none of it', () =>
      withStore(async (store) => {
        await store.append([opened(A), note(A, 2, 'theirs', 'T. Okafor')]);
        await expect(store.append([note(A, 2, 'mine'), note(A, 3, 'mine too')])).rejects.toThrow(ConflictError);
        expect(await store.read(A)).toHaveLength(2);
      }));

    test('a page that is ahead of the record (restored from an older backup) is told where the record ends', () =>
      withStore(async (store) => {
        await store.append([opened(A)]);
        await expect(store.append([note(A, 5)])).rejects.toMatchObject({ name: 'ConflictError', seq: 1, missed: [] });
      }));

    test.each([
      ['no event', []],
      ['a case that does not begin with case-opened', [note(A, 1)]],
      ['two cases in one batch', [opened(A), note(B, 2)]],
      ['a gap in the batch', [opened(A), note(A, 3)]],
      ['a film whose file never came', [opened(A), filmAdded(A, 2, someBytes(10))]],
      [
        'something about a film that is not there',
        [opened(A), event(A, 2, 'film-removed', { filmId: 'film-nowhere' })],
      ],
      ['one id for two events', [opened(A), { ...note(A, 2), id: opened(A).id }]],
    ])('refused in words, and nothing of it recorded: %s', (_, events) =>
      withStore(async (store) => {
        await expect(store.append(events)).rejects.toThrow(InputError);
        expect(await store.list()).toEqual([]);
        expect(await store.read(A)).toEqual([]);
      }),
    );

    test('another server writes to the same records in between: both see one order, and neither overwrites', () =>
      withStore(async (store, place) => {
        const other = await place.open();
        await store.append([opened(A)]);
        await other.append([note(A, 2, 'theirs', 'T. Okafor')]);
        await expect(store.append([note(A, 2, 'mine')])).rejects.toMatchObject({ seq: 2 });
        await store.append([note(A, 3, 'mine')]);
        await other.append([event(A, 4, 'patient-amended', { massG: 301 })]);
        expect((await store.list())[0]).toMatchObject({ seq: 4, massG: 301 });
        await other.close();
      }));

    test('changes come in the order of recording, across cases, from any place on', () =>
      withStore(async (store) => {
        expect(await store.lastPosition()).toBe(0);
        await store.append([opened(A)]);
        await store.append([opened(B), note(B, 2)]);
        const { position } = await store.append([note(A, 2)]);
        const all = await store.changesAfter(0, 100);
        expect(all.map(({ caseId, seq }) => [caseId, seq])).toEqual([
          [A, 1],
          [B, 1],
          [B, 2],
          [A, 2],
        ]);
        expect(await store.changesAfter(all[1]?.position ?? 0, 1)).toEqual([all[2]]);
        expect(position).toBe(await store.lastPosition());
      }));
  });

  test('two people who write at once and send again after a conflict: everything is recorded once, each in their own order', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 6 }),
        fc.infiniteStream(fc.boolean()),
        (sizes, turns) =>
          withStore(async (store) => {
            await store.append([opened(A)]);
            const written = await Promise.all(['R. Fenn', 'T. Okafor'].map((by) => writeAll(store, by, sizes, turns)));
            const notes = foldCase(await store.read(A)).notes;
            expect(notes).toHaveLength(written.flat().length);
            for (const [i, by] of ['R. Fenn', 'T. Okafor'].entries())
              expect(notes.filter((n) => n.by === by).map((n) => n.value.text)).toEqual(written[i]);
          }),
      ),
      { numRuns: 15 },
    ));

  describe('the board', () => {
    test('a line a case, the last changed first, made with the events', () =>
      withStore(async (store) => {
        await store.append([opened(A)]);
        await store.append([opened(B)]);
        await store.append([event(A, 2, 'patient-amended', { massG: 297 })]);
        const rows = await store.list();
        expect(rows.map(({ caseId, massG, seq }) => [caseId, massG, seq])).toEqual([
          [A, 297, 2],
          [B, 310, 1],
        ]);
      }));
  });

  describe('the demonstration', () => {
    test('is taken out whole, and no real patient with it', () =>
      withStore(async (store) => {
        await store.append([opened(A), note(A, 2)]);
        await store.append([opened(B, true), note(B, 2)]);
        const before = await store.lastPosition();
        expect(await store.removeDemonstration()).toBe(1);
        expect((await store.list()).map(({ caseId }) => caseId)).toEqual([A]);
        expect(await store.read(B)).toEqual([]);
        expect(await store.read(A)).toHaveLength(2);
        const { position } = await store.append([note(A, 3)]);
        expect(position).toBeGreaterThan(before);
      }));

    test('what was done once in a folder stays noted', () =>
      withStore(async (store, place) => {
        expect(await store.isMarked('offered')).toBe(false);
        await store.mark('offered');
        await store.mark('offered');
        const again = await place.open();
        expect(await again.isMarked('offered')).toBe(true);
        await again.close();
      }));
  });

  describe('attachments', () => {
    const film = someBytes(250_000);

    test('are kept by their hash and come back byte for byte', () =>
      withStore(async (store, place) => {
        const kept = await store.putAttachment(chunks(film));
        expect(kept).toEqual({ sha256: sha256(film), byteLength: film.length });
        expect(existsSync(join(place.dir, 'attachments', kept.sha256.slice(0, 2), kept.sha256))).toBe(true);
        const found = await store.getAttachment(kept.sha256);
        expect(found?.byteLength).toBe(film.length);
        expect(sha256(await buffer(found!.bytes))).toBe(kept.sha256);
      }));

    test('the same file twice, at the same moment, is one file', () =>
      withStore(async (store) => {
        const puts = await Promise.all([store.putAttachment(chunks(film)), store.putAttachment(chunks(film, 77_777))]);
        expect(puts[0]).toEqual(puts[1]);
      }));

    test('a film is recorded once its file is there', () =>
      withStore(async (store) => {
        await store.putAttachment(chunks(film));
        expect(await store.append([opened(A), filmAdded(A, 2, film)])).toMatchObject({ added: 2 });
      }));

    test.each([
      ['damaged on the way', film, { expectedSha256: '0'.repeat(64) }],
      ['too large', film, { largestBytes: 200_000 }],
      ['empty', new Uint8Array(0), {}],
    ])('refused in words, and no bytes stay behind: %s', (_, bytes, options) =>
      withStore(async (store) => {
        await expect(store.putAttachment(chunks(bytes), options)).rejects.toThrow(InputError);
        expect(await store.getAttachment(sha256(bytes))).toBeNull();
      }),
    );

    test('one that nobody sent is null', () =>
      withStore(async (store) => {
        expect(await store.getAttachment(sha256(randomBytes(8)))).toBeNull();
      }));
  });
});

/** Sends batches of these sizes; after a conflict the same notes again under the next free numbers. */
async function writeAll(
  store: Store,
  by: string,
  sizes: readonly number[],
  turns: Iterator<boolean>,
): Promise<string[]> {
  const texts = sizes.map((size, batch) => Array.from({ length: size }, (_, i) => `${batch}.${i}`));
  let seq = 1;
  for (const batch of texts) {
    for (;;) {
      if (turns.next().value) await new Promise((resolve) => setImmediate(resolve));
      const events = batch.map((text, i) => note(A, seq + 1 + i, text, by));
      const conflict = await store.append(events).then(
        () => null,
        (error: unknown) => error,
      );
      seq = conflict instanceof ConflictError ? conflict.seq : seq + batch.length;
      if (conflict === null) break;
      if (!(conflict instanceof ConflictError)) throw conflict;
    }
  }
  return texts.flat();
}
