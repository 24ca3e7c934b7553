import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { InputError } from '@bonewright/fault';
import { expect, onTestFinished, test } from 'vitest';
import type { Store } from './index.ts';
import { chunks, opened, sha256, someBytes } from './test/cases.ts';
import { onEveryDatabase, type Place } from './test/places.ts';

const A = 'case-aaaa';
const film = someBytes(5000);
const received = { sha256: sha256(film), sender: 'XRAY1', header: { viewPosition: 'AP', species: 'hedgehog' } };

onEveryDatabase((newPlace) => {
  async function withFilm(place?: Place): Promise<Store> {
    const store = await (place ?? (await newPlace())).open();
    onTestFinished(() => store.close());
    await store.putAttachment(chunks(film));
    await store.append([opened(A)]);
    await store.inbox.add(received);
    return store;
  }

  test('a received film waits with who sent it, its size and its header, also in a restored backup', async () => {
    const place = await newPlace();
    const store = await withFilm(place);
    const waiting = await store.inbox.waiting();
    expect(waiting).toEqual([
      { ...received, byteLength: film.length, receivedAt: expect.stringMatching(/^\d{4}-.*Z$/) },
    ]);
    await store.backup(join(place.dir, 'backup'));
    const restored = await place.openRestored(join(place.dir, 'backup'));
    expect(await restored.inbox.waiting()).toEqual(waiting);
    await restored.close();
  });

  test.each([{ matched: A }, { setAside: 'of another animal' }])(
    '%o: it waits no more, can be settled once only, and its file stays',
    async (outcome) => {
      const store = await withFilm();
      expect(await store.inbox.settle(received.sha256, outcome)).toBe(true);
      expect(await store.inbox.waiting()).toEqual([]);
      expect(await store.inbox.settle(received.sha256, { setAside: 'again' })).toBe(false);
      const kept = await buffer((await store.getAttachment(received.sha256))!.bytes);
      expect(sha256(kept)).toBe(received.sha256);
    },
  );

  test('a film that was set aside by mistake waits again when the machine sends it again', async () => {
    const store = await withFilm();
    await store.inbox.settle(received.sha256, { setAside: 'by mistake' });
    await store.inbox.add(received);
    expect(await store.inbox.waiting()).toHaveLength(1);
  });

  test('a case that is not here is refused, and the film goes on waiting', async () => {
    const store = await withFilm();
    await expect(store.inbox.settle(received.sha256, { matched: 'case-gone' })).rejects.toThrow(InputError);
    expect(await store.inbox.waiting()).toHaveLength(1);
  });

  test('a film whose file is not kept is not listed', async () => {
    const store = await withFilm();
    await expect(store.inbox.add({ ...received, sha256: 'f'.repeat(64) })).rejects.toThrow();
    expect(await store.inbox.waiting()).toHaveLength(1);
  });

  test('a file refused by whoever inspects it whole leaves nothing on the disk', async () => {
    const { dir, open } = await newPlace();
    const store = await open();
    onTestFinished(() => store.close());
    const inspected: string[] = [];
    const inspect = async (path: string): Promise<void> => {
      inspected.push(path);
      throw new InputError('this is no film');
    };
    await expect(store.putAttachment(chunks(film), { inspect })).rejects.toThrow('this is no film');
    expect(inspected).toHaveLength(1);
    expect(readdirSync(join(dir, 'attachments', 'incoming'))).toEqual([]);
    expect(await store.getAttachment(sha256(film))).toBeNull();
  });
});
