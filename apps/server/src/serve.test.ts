/** The real thing: a listening server, real requests. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { InputError } from '@bonewright/fault';
import { startPostgres } from '@bonewright/store/private-postgres';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { serveArguments } from './arguments.ts';
import { serve } from './index.ts';
import { listen } from './test/listen.ts';
import { CASE, freshFolder, note, opened } from './test/served.ts';

async function running(dataDir = freshFolder(), wanted: { readonly database?: string } = {}) {
  const server = await serve({ port: 0, dataDir, isEmptyWanted: true, ...wanted });
  onTestFinished(server.close);
  return server;
}

async function post(address: string, events: unknown[]): Promise<Response> {
  const headers = { 'content-type': 'application/json' };
  return fetch(`${address}/api/cases/${CASE}/events`, { method: 'POST', headers, body: JSON.stringify({ events }) });
}

describe('live updates', () => {
  test('an open page hears of every event, in order', async () => {
    const { address } = await running();
    const page = await listen(address);
    await post(address, [opened(), note(2)]);
    await post(address, [note(3)]);
    expect(await page.changes(3)).toEqual([1, 2, 3]);
  });

  test('a page that was away hears what it missed, from its last event on', async () => {
    const { address } = await running();
    const page = await listen(address);
    await post(address, [opened()]);
    await page.changes(1);
    const lastId = page.lastId();
    page.leave();
    await post(address, [note(2), note(3)]);
    const back = await listen(address, lastId);
    expect(await back.changes(2)).toEqual([2, 3]);
  });

  test('a page from before the records were emptied is told to read everything again', async () => {
    const { address } = await running();
    const page = await listen(address, '999999');
    expect(await page.heard('reset')).toBe(true);
  });

  test('a closing server does not wait for open pages', async () => {
    const server = await serve({ port: 0, dataDir: freshFolder(), isEmptyWanted: true });
    const page = await listen(server.address);
    await server.close();
    page.leave();
  });
});

describe.skipIf(process.env.BONEWRIGHT_NO_POSTGRES !== undefined)('two servers on one PostgreSQL', () => {
  test('a page open at one hears of what is sent to the other, and both show one record', async () => {
    const postgres = await startPostgres();
    onTestFinished(postgres.stop);
    const database = await postgres.freshDatabase();
    const dataDir = freshFolder();
    const [one, other] = [await running(dataDir, { database }), await running(dataDir, { database })];
    const page = await listen(other.address);
    await post(one.address, [opened(), note(2)]);
    await post(other.address, [note(3)]);
    await post(one.address, [note(4)]);
    expect(await page.changes(4)).toEqual([1, 2, 3, 4]);
    expect(await post(other.address, [note(4, 'T. Okafor')])).toMatchObject({ status: 409 });
    const boards = await Promise.all(
      [one, other].map(async ({ address }) => (await fetch(`${address}/api/cases`)).json()),
    );
    expect(boards[0]).toEqual(boards[1]);
    await fetch(`${one.address}/api/empty`, { method: 'POST' });
    expect(await page.heard('reset')).toBe(true);
  });
});

describe('starting', () => {
  test('what was recorded is there after the server was stopped and started', async () => {
    const dataDir = freshFolder();
    const first = await serve({ port: 0, dataDir, isEmptyWanted: true });
    await post(first.address, [opened(), note(2)]);
    await first.close();
    const { address } = await running(dataDir);
    const { events } = await (await fetch(`${address}/api/cases/${CASE}/events`)).json();
    expect(events).toHaveLength(2);
  });

  test('a new folder begins to make the demonstration; begin empty stops that, and it does not come back by itself', async () => {
    const dataDir = freshFolder();
    const board = async (address: string) => (await fetch(`${address}/api/cases`)).json();
    const first = await serve({ port: 0, dataDir });
    await vi.waitFor(async () => expect(await board(first.address)).toMatchObject({ preparing: true }));
    await fetch(`${first.address}/api/empty`, { method: 'POST' });
    expect(await board(first.address)).toMatchObject({ cases: [], preparing: false });
    await first.close();
    const second = await serve({ port: 0, dataDir });
    onTestFinished(second.close);
    expect(await board(second.address)).toMatchObject({ cases: [], preparing: false });
  });

  test('a taken port is said in words, with what to do', async () => {
    const taken = createServer().listen(0, '127.0.0.1');
    await once(taken, 'listening');
    onTestFinished(() => void taken.close());
    const bound = taken.address();
    const port = typeof bound === 'object' && bound ? bound.port : 0;
    const refused = serve({ port, dataDir: freshFolder() });
    await expect(refused).rejects.toThrow(InputError);
    await expect(refused).rejects.toThrow(`npm start -- --port ${port + 1}`);
  });

  test('the program prints its address once and ends well when told to', async () => {
    const main = join(import.meta.dirname, 'main.ts');
    const program = spawn(process.execPath, [
      '--import',
      'tsx',
      main,
      '--port',
      '0',
      '--data',
      freshFolder(),
      '--empty',
    ]);
    let said = '';
    program.stdout.on('data', (chunk: Buffer) => {
      said += chunk;
    });
    while (!said.includes('\n')) await once(program.stdout, 'data');
    expect(said).toMatch(/^Bonewright is at http:\/\/127\.0\.0\.1:\d+\/\n$/);
    const health = await fetch(`${said.split(' at ')[1]?.trim()}api/health`);
    expect(await health.json()).toMatchObject({ name: 'bonewright' });
    program.kill('SIGTERM');
    expect(await once(program, 'exit')).toEqual([0, null]);
  });
});

describe('arguments', () => {
  test('port, folder and host', () => {
    expect(serveArguments(['--port', '0', '--data', '/srv/ward', '--host', '0.0.0.0'])).toEqual({
      port: 0,
      dataDir: '/srv/ward',
      isEmptyWanted: false,
      host: '0.0.0.0',
    });
    expect(serveArguments([]).port).toBe(4180);
    expect(serveArguments(['--database', 'postgres://ward@db/records']).database).toBe('postgres://ward@db/records');
  });

  test.each([['--port', 'eighty'], ['--port', '-1'], ['--port', '70000'], ['--fast'], ['extra'], ['--data']])(
    'refused in words: %s %s',
    (...args) => {
      expect(() => serveArguments(args)).toThrow(InputError);
    },
  );
});
