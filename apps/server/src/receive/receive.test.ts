import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { DiskError, openStore, type Store } from '@bonewright/store';
import fc from 'fast-check';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { buildApp } from '../app.ts';
import { CR, EXPLICIT, fragment, Machine } from '../test/machine.ts';
import { CASE, freshFolder, opened } from '../test/served.ts';
import { fileHead } from './file-head.ts';

const CASES = join(import.meta.dirname, '../../../../packages/film/cases/dicom');
const HTJ2K = '1.2.840.10008.1.2.4.201';
const SUCCESS = 0;

/** What stands after the file meta information, whose length its first element says (PS3.10 section 7.1). */
function dataSetOf(file: Buffer): Buffer {
  return file.subarray(144 + file.readUInt32LE(140));
}

const film = dataSetOf(readFileSync(join(CASES, 'u12.dcm')));

async function receiving(change: (store: Store) => Store = (store) => store) {
  const dir = freshFolder();
  const store = await openStore(dir);
  const logged: string[] = [];
  const receive = { address: '127.0.0.1', port: 0, title: 'THEATRE' };
  const log = { write: (line: string) => logged.push(line) };
  const app = await buildApp({ store: change(store), webDir: dir, log, isEmptyWanted: true, receive });
  const address = await app.listen({ port: 0 });
  onTestFinished(async () => {
    await app.close();
    await store.close();
  });
  const inbox = async () => (await app.inject('/api/inbox')).json();
  const { port } = (await inbox()).receiving;
  const keptFiles = () =>
    readdirSync(join(dir, 'attachments'), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return { app, store, port, address, inbox, logged, keptFiles };
}

describe('a film from the X-ray machine', () => {
  test('is kept byte for byte behind a file head of ours, listed, and said to open pages', async () => {
    const { store, port, address, inbox, logged } = await receiving();
    const events = await fetch(`${address}/api/events`);
    const machine = await Machine.ready(port);
    expect(await machine.film(film)).toBe(SUCCESS);
    const { films } = await inbox();
    expect(films).toMatchObject([{ sender: 'XRAY1', header: { species: 'Red squirrel' } }]);
    const kept = await buffer((await store.getAttachment(films[0].sha256))!.bytes);
    const head = fileHead({ sopClass: CR, sopInstance: '2.25.7', syntax: EXPLICIT });
    expect(kept.equals(Buffer.concat([head, film]))).toBe(true);
    expect(await firstOf(events, 'event: inbox')).toBe(true);
    expect(logged.join('')).toContain(films[0].sha256);
    expect(logged.join('')).not.toMatch(/squirrel/i);
    machine.leave();
  });

  test('in high-throughput JPEG 2000, which storescu cannot send', async () => {
    const { port, inbox } = await receiving();
    const machine = await Machine.ready(port, [{ id: 1, sopClass: CR, syntaxes: ['1.2.3', HTJ2K] }]);
    expect(await machine.film(dataSetOf(readFileSync(join(CASES, 'u12-htj2k201.dcm'))))).toBe(SUCCESS);
    expect((await inbox()).films).toHaveLength(1);
    machine.leave();
  });

  test('comes out the same however it is cut into fragments and messages', async () => {
    const { port, inbox } = await receiving();
    const machine = await Machine.ready(port);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 0, max: film.length }), { maxLength: 12 }), async (cuts) => {
        machine.store(1, '2.25.7');
        const edges = [0, ...cuts.toSorted((a, b) => a - b), film.length];
        const pieces = edges.slice(1).map((end, i) => film.subarray(edges[i], end));
        const sent = pieces.map((piece, i) => fragment(1, piece, 'data', i === pieces.length - 1 ? 'last' : 'more'));
        const half = Math.floor(sent.length / 2);
        if (half > 0) machine.data(...sent.slice(0, half));
        machine.data(...sent.slice(half));
        expect(await machine.status()).toBe(SUCCESS);
        // One hash, one film: had any byte moved there would be two.
        expect((await inbox()).films).toHaveLength(1);
      }),
      { numRuns: 8 },
    );
    machine.leave();
  });

  test('that is no sound film is refused with a status, nothing is kept, and the next one is taken', async () => {
    const { port, inbox, keptFiles, logged } = await receiving();
    const machine = await Machine.ready(port);
    expect(await machine.film(film.subarray(0, film.length - 400))).toBe(0xc000);
    expect((await inbox()).films).toEqual([]);
    expect(keptFiles()).toEqual([]);
    expect(logged.at(-1)).toMatch(/a film from XRAY1 was refused: the pixel data ends after 5334 of 5734 bytes/);
    expect(await machine.film(film)).toBe(SUCCESS);
    machine.leave();
  });

  test('that finds the disk full is answered with "out of resources"', async () => {
    const putAttachment: Store['putAttachment'] = async (bytes) => {
      await buffer(bytes);
      throw new DiskError('the disk is full');
    };
    const { port, logged } = await receiving((store) => ({ ...store, putAttachment }));
    const machine = await Machine.ready(port);
    expect(await machine.film(film)).toBe(0xa700);
    expect(logged.at(-1)).toMatch(/refused: the disk is full/);
    machine.leave();
  });

  test('that breaks off leaves nothing behind', async () => {
    const { port, inbox, keptFiles, logged } = await receiving();
    const machine = await Machine.ready(port);
    machine.store(1, '2.25.7');
    machine.data(fragment(1, film.subarray(0, 900), 'data', 'more'));
    machine.socket.end();
    await expect.poll(() => logged.join('')).toMatch(/refused: the connection broke off before the film was whole/);
    expect(keptFiles()).toEqual([]);
    expect((await inbox()).films).toEqual([]);
  });
});

describe('what no X-ray machine sends ends its own connection and nothing else', () => {
  test.each<[string, (machine: Machine) => unknown]>([
    ['noise', (machine) => machine.socket.write('GET / HTTP/1.1\r\n\r\n')],
    ['a message said to be 4 GB long', (machine) => machine.send(0x04, Buffer.alloc(10), 0xffffffff)],
    ['data that no command announced', (machine) => machine.data(fragment(1, film, 'data', 'last'))],
    ['data for something never agreed on', (machine) => machine.data(fragment(9, film, 'data', 'last'))],
    ['a fragment longer than its message', (machine) => machine.data(Buffer.from([0, 0, 255, 255, 1, 2, 0, 0]))],
    ['a command without end', (machine) => flood(machine)],
    ['a film named by no UID', (machine) => machine.sendFilm(film, { sopInstance: '../../etc' })],
    ['a second film before the first was answered', (machine) => [1, 2].map(() => machine.sendFilm(film))],
    ['a giving up', (machine) => machine.send(0x07, Buffer.alloc(4))],
  ])('%s', async (_what, misbehave) => {
    const { port, app } = await receiving();
    const bad = await Machine.ready(port);
    misbehave(bad);
    while ((await bad.answer()) !== null);
    const good = await Machine.ready(port);
    expect(await good.film(film)).toBe(SUCCESS);
    expect((await app.inject('/api/health')).statusCode).toBe(200);
    good.leave();
  });

  test('a command of noise', async () => {
    const { port } = await receiving();
    const bad = await Machine.ready(port);
    bad.data(fragment(1, Buffer.alloc(300, 0xa5), 'command', 'last'));
    bad.socket.end();
    const good = await Machine.ready(port);
    expect(await good.echo()).toBe(SUCCESS);
    good.leave();
  });

  test('a proposal too long to be answered, or without its parts', async () => {
    const { port } = await receiving();
    for (const proposal of [
      { id: 1, sopClass: CR, syntaxes: ['1'.repeat(65_000)] },
      { id: 1, sopClass: '', syntaxes: [] },
    ]) {
      const bad = await Machine.on(port);
      await bad.propose('THEATRE', [proposal]);
      bad.leave();
    }
    const good = await Machine.ready(port);
    expect(await good.echo()).toBe(SUCCESS);
    good.leave();
  });

  test('ten minutes in which nothing whole comes', async () => {
    const { port, logged } = await receiving();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const machine = await Machine.ready(port);
    vi.advanceTimersByTime(10 * 60_000 - 1);
    expect(await machine.echo()).toBe(SUCCESS);
    vi.advanceTimersByTime(10 * 60_000);
    expect(await machine.answer()).toMatchObject({ type: 7 });
    expect(logged.at(-1)).toMatch(/connection of XRAY1 was ended: nothing whole came in ten minutes/);
  });

  test('another title is turned away', async () => {
    const { port } = await receiving();
    const machine = await Machine.on(port);
    expect(await machine.propose('ELSEWHERE', [{ id: 1, sopClass: CR, syntaxes: [EXPLICIT] }])).toMatchObject({
      type: 3,
    });
    machine.leave();
  });

  test('what was proposed and refused cannot be sent all the same', async () => {
    const { port, inbox } = await receiving();
    const machine = await Machine.ready(port, [
      { id: 1, sopClass: '1.2.840.10008.5.1.4.1.1.88.11', syntaxes: [EXPLICIT] },
    ]);
    expect(await machine.film(film)).toBeNull();
    expect((await inbox()).films).toEqual([]);
  });
});

describe('the inbox over HTTP', () => {
  async function withFilm() {
    const server = await receiving();
    await server.store.append([opened()]);
    const machine = await Machine.ready(server.port);
    await machine.film(film);
    machine.leave();
    const { films } = await server.inbox();
    return { ...server, url: `/api/inbox/${films[0].sha256}`, sha256: films[0].sha256 };
  }

  test('a matched film leaves the list; its file stays; a second match finds it gone', async () => {
    const { app, inbox, url, sha256 } = await withFilm();
    const match = () => app.inject({ method: 'POST', url: `${url}/match`, payload: { caseId: CASE } });
    expect((await match()).statusCode).toBe(200);
    expect((await inbox()).films).toEqual([]);
    expect((await app.inject(`/api/attachments/${sha256}`)).statusCode).toBe(200);
    expect((await match()).statusCode).toBe(404);
  });

  test('a film set aside needs a reason; its file stays', async () => {
    const { app, inbox, url, sha256 } = await withFilm();
    const setAside = (payload: object) => app.inject({ method: 'DELETE', url, payload });
    expect((await setAside({ reason: ' ' })).json().error).toMatch(/say why/);
    expect((await setAside({})).statusCode).toBe(400);
    expect((await setAside({ reason: 'not one of ours' })).statusCode).toBe(200);
    expect((await inbox()).films).toEqual([]);
    expect((await app.inject(`/api/attachments/${sha256}`)).statusCode).toBe(200);
  });

  test('a case that is not here is refused in words, and the film goes on waiting', async () => {
    const { app, inbox, url } = await withFilm();
    const refused = await app.inject({ method: 'POST', url: `${url}/match`, payload: { caseId: 'case-gone' } });
    expect([refused.statusCode, refused.json().error]).toEqual([400, expect.stringMatching(/no such case/)]);
    expect((await inbox()).films).toHaveLength(1);
  });
});

function flood(machine: Machine): void {
  for (let sent = 0; sent < 40; sent++) machine.data(fragment(1, Buffer.alloc(16_000), 'command', 'more'));
}

async function firstOf(events: Response, wanted: string): Promise<boolean> {
  let heard = '';
  for await (const chunk of events.body ?? []) {
    heard += Buffer.from(chunk).toString();
    if (heard.includes(wanted)) return true;
  }
  return false;
}
