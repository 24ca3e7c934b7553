/** Opening to the network, and what an open page hears, on a listening server. */
import { InputError } from '@bonewright/fault';
import { openStore } from '@bonewright/store';
import { expect, onTestFinished, test } from 'vitest';
import { serve } from '../serve.ts';
import { PASSWORD } from '../test/people.ts';
import { CASE, freshFolder, note, opened } from '../test/served.ts';
import { makeFirstPerson } from './accounts.ts';
import { Passwords } from './password.ts';
import { Sessions } from './sessions.ts';

const CHEAP = new Passwords({ N: 2, r: 8, p: 1 });

test.each(['0.0.0.0', '::', '192.0.2.7', 'ward-pc'])(
  'without accounts nothing listens on %s, and the line says what to do',
  async (host) => {
    const dataDir = freshFolder();
    const refused = serve({ port: 0, dataDir, host, isEmptyWanted: true });
    await expect(refused).rejects.toThrow(InputError);
    await expect(refused).rejects.toThrow(/nobody has an account yet/);
  },
);

test('with an account it listens on all addresses; a stranger reads nothing, nor does this machine', async () => {
  const { address } = await withPeople('0.0.0.0');
  for (const path of ['/api/cases', '/api/events', '/api/people', `/api/cases/${CASE}/events`])
    expect((await fetch(address + path)).status).toBe(401);
  expect((await fetch(`${address}/api/session`)).status).toBe(200);
});

test('a page hears of its own patients only, and no more once its session has ended', async () => {
  const { address, store, carer } = await withPeople('127.0.0.1');
  const headers = { cookie: `bonewright_session=${carer.token}` };
  const left = new AbortController();
  onTestFinished(() => left.abort());
  const response = await fetch(`${address}/api/events`, { headers, signal: left.signal });
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let heard = '';
  const until = async (word: string) => {
    while (!heard.includes(word)) {
      const { value, done } = await reader.read();
      if (done) return;
      heard += value;
    }
  };
  await until('event: hello');
  const send = (caseId: string, events: unknown[]) =>
    fetch(`${address}/api/cases/${caseId}/events`, {
      method: 'POST',
      headers: {
        cookie: `bonewright_session=${carer.ownerToken}`,
        'x-bonewright': 'page',
        'content-type': 'application/json',
      },
      body: JSON.stringify({ events }),
    });
  await send('case-bbbb', [{ ...opened(), id: 'case-bbbb-1', caseId: 'case-bbbb' }]);
  await send(CASE, [opened(), note(2)]);
  await until('"seq":2');
  expect(heard).toContain(CASE);
  expect(heard).not.toContain('case-bbbb');
  await fetch(`${address}/api/session`, { method: 'DELETE', headers: { ...headers, 'x-bonewright': 'page' } });
  await until('never said');
  expect(heard).not.toContain('never said');
  await store.close();
});

async function withPeople(host: string) {
  const dataDir = freshFolder();
  const store = await openStore(dataDir);
  const from = { address: '127.0.0.1', device: 'test' };
  const boss = await makeFirstPerson(store.people, CHEAP, { name: 'R. Fenn', role: 'surgeon', password: PASSWORD });
  const carer = { ...boss, id: 'carer-aaaa', name: 'Thornbeck', role: 'carer', isOwner: false, cases: [CASE] } as const;
  await store.people.add(carer);
  const sessions = new Sessions(store.people);
  const [{ token: ownerToken }, { token }] = [await sessions.start(boss, from), await sessions.start(carer, from)];
  const server = await serve({ port: 0, dataDir, host, isEmptyWanted: true });
  onTestFinished(server.close);
  const address = server.address.replace('0.0.0.0', '127.0.0.1');
  return { address, store, carer: { token, ownerToken } };
}
