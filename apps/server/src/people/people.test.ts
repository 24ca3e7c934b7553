/** Accounts as people meet them: first owner, signing in, waiting, links, sessions that end, and pages of other sites. */
import type { InjectOptions } from 'fastify';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { asking, owner, PASSWORD, somebody } from '../test/people.ts';
import { CASE, note, opened, served } from '../test/served.ts';
import { WITH_NAME, waitUntil } from './lock-out.ts';
import { OWASP_SCRYPT, Passwords, requireGoodPassword } from './password.ts';

afterEach(() => vi.useRealTimers());

const later = (ms: number) => vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + ms });
const HOUR_MS = 3_600_000;
const page = { 'x-bonewright': 'page' };
const first = { name: 'R. Fenn', role: 'surgeon', password: PASSWORD };
const post = (url: string, payload: object): InjectOptions => ({ method: 'POST', url, payload, headers: page });

describe('this machine, while nobody has an account', () => {
  test('acts as the owner and asks for no password', async () => {
    const { app } = await served();
    expect((await app.inject('/api/session')).json()).toMatchObject({
      accounts: false,
      person: { name: null, isOwner: true },
    });
    expect((await app.inject('/api/cases')).statusCode).toBe(200);
  });

  test.each([
    ['another machine', { remoteAddress: '192.168.1.20' }],
    ['somebody behind a proxy here', { headers: { 'x-forwarded-for': '192.168.1.20' } }],
  ])('%s is not this machine', async (_, from) => {
    const { app } = await served();
    expect((await app.inject({ url: '/api/cases', ...from })).statusCode).toBe(401);
  });

  test('a name that only points here (DNS rebinding) is refused, read or write, page or record', async () => {
    const { app, store } = await served();
    await store.append([opened()]);
    const headers = { host: 'rebound.example.net:4180', origin: 'http://rebound.example.net:4180' };
    for (const url of ['/', '/api/cases', `/api/cases/${CASE}/events`, '/api/session'])
      expect((await app.inject({ url, headers })).statusCode).toBe(421);
    const sent = { method: 'POST', url: '/api/session/first', payload: first, headers } as const;
    expect((await app.inject(sent)).statusCode).toBe(421);
    expect(await store.people.hasAccounts()).toBe(false);
  });

  test('the first account is an owner, signed in at once; from then on this machine signs in too', async () => {
    const { app, store } = await served();
    const made = await app.inject(post('/api/session/first', { ...first, role: 'nurse' }));
    expect(made.statusCode).toBe(200);
    expect(made.headers['set-cookie']).toMatch(/HttpOnly; SameSite=Strict/);
    expect(await store.people.list()).toMatchObject([{ name: 'R. Fenn', role: 'nurse', isOwner: true }]);
    expect((await app.inject('/api/cases')).statusCode).toBe(401);
    const [cookie] = made.cookies;
    expect((await asking(app, cookie?.value ?? '')({ url: '/api/people' })).statusCode).toBe(200);
    expect((await app.inject(post('/api/session/first', first))).statusCode).toBe(401);
  });
});

describe('signing in', () => {
  test('with name and password, in whatever case the name is typed; the store holds neither token nor password', async () => {
    const on = await served();
    await owner(on);
    const answer = await on.app.inject(post('/api/session', { name: ' r. FENN ', password: PASSWORD }));
    expect([answer.statusCode, answer.json()]).toEqual([200, { name: 'R. Fenn' }]);
    const token = answer.cookies[0]?.value ?? '';
    expect(token).toHaveLength(43);
    const [person] = await on.store.people.list();
    const kept = JSON.stringify([
      person,
      await on.store.people.sessionsOf(person?.id ?? ''),
      await on.store.people.log(99, null),
    ]);
    expect(kept).not.toContain(token);
    expect(kept).not.toContain(PASSWORD);
  });

  test('a wrong name and a wrong password get the same answer', async () => {
    const on = await served();
    await owner(on);
    const [name, password] = await Promise.all([
      on.app.inject(post('/api/session', { name: 'Nobody', password: PASSWORD })),
      on.app.inject(post('/api/session', { name: 'R. Fenn', password: 'wrong wrong wrong' })),
    ]);
    expect([name.statusCode, name.body]).toEqual([401, password.body]);
  });

  test('after five wrong tries the sixth waits, also when it is right, and is told for how long; after the wait it opens', async () => {
    const on = await served();
    await owner(on);
    const attempt = (password: string) => on.app.inject(post('/api/session', { name: 'R. Fenn', password }));
    for (let i = 0; i < 5; i += 1) expect((await attempt('wrong wrong wrong')).statusCode).toBe(401);
    const told = await attempt(PASSWORD);
    expect([told.statusCode, told.json().error]).toEqual([429, expect.stringMatching(/Try again in \d+ seconds/)]);
    expect(Number(told.headers['retry-after'])).toBeGreaterThan(0);
    later(16_000);
    expect((await attempt(PASSWORD)).statusCode).toBe(200);
    expect((await on.store.people.log(99, null)).map(({ what }) => what)).toEqual(
      expect.arrayContaining(['not signed in', 'told to wait', 'signed in']),
    );
  });

  test('fifty wrong tries at once get no further than five after one another', async () => {
    const on = await served();
    await owner(on);
    const answers = await Promise.all(
      Array.from({ length: 15 }, () =>
        on.app.inject(post('/api/session', { name: 'R. Fenn', password: 'no no no no no' })),
      ),
    );
    expect(answers.filter(({ statusCode }) => statusCode === 401)).toHaveLength(5);
  });

  test('one address that tries many names waits too', async () => {
    const on = await served();
    await owner(on);
    const answers = [];
    for (let i = 0; i < 21; i += 1)
      answers.push(await on.app.inject(post('/api/session', { name: `name ${i}`, password: 'x' })));
    expect(answers.at(-1)?.statusCode).toBe(429);
  });

  test('the wait doubles from 15 seconds to a quarter of an hour', () => {
    const at = '2026-11-25T23:00:00.000Z';
    const waits = [4, 5, 6, 8, 30].map((n) => (Date.parse(waitUntil(WITH_NAME)(n, at)) - Date.parse(at)) / 1000);
    expect(waits).toEqual([0, 15, 30, 120, 900]);
  });
});

describe('a session', () => {
  test.each([
    ['after two hours without a sign of life', 2 * HOUR_MS + 60_000],
    ['after twelve hours', 12 * HOUR_MS],
  ])('is over %s', async (_, ms) => {
    const on = await served();
    const { ask } = await owner(on);
    later(ms);
    expect((await ask({ url: '/api/cases' })).statusCode).toBe(401);
  });

  test('lives on while it is used, but no longer than twelve hours', async () => {
    const on = await served();
    const { ask } = await owner(on);
    const answers: number[] = [];
    for (let hour = 0; hour < 12; hour += 1) {
      later(HOUR_MS);
      answers.push((await ask({ url: '/api/cases' })).statusCode);
    }
    expect(answers).toEqual([...Array.from({ length: 11 }, () => 200), 401]);
  });

  test('ends when it is signed out, here or everywhere else', async () => {
    const on = await served();
    const { ask } = await owner(on);
    const other = await on.app.inject(post('/api/session', { name: 'R. Fenn', password: PASSWORD }));
    const otherAsk = asking(on.app, other.cookies[0]?.value ?? '');
    expect((await ask({ method: 'DELETE', url: '/api/account/sessions' })).json()).toEqual({ ended: 1 });
    expect((await otherAsk({ url: '/api/cases' })).statusCode).toBe(401);
    await ask({ method: 'DELETE', url: '/api/session' });
    expect((await ask({ url: '/api/cases' })).statusCode).toBe(401);
  });

  test('takes a change of role at once, and ends when the person is switched off', async () => {
    const on = await served();
    const boss = await owner(on);
    const nurse = await somebody(on, 'nurse');
    const change = (payload: object) => boss.ask({ method: 'PATCH', url: `/api/people/${nurse.id}`, payload });
    expect((await nurse.ask({ url: '/api/inbox' })).statusCode).toBe(200);
    await change({ role: 'records keeper' });
    expect((await nurse.ask({ url: '/api/inbox' })).statusCode).toBe(403);
    await change({ isActive: false });
    expect((await nurse.ask({ url: '/api/cases' })).statusCode).toBe(401);
  });

  test('the last owner can be neither switched off nor made anybody less', async () => {
    const on = await served();
    const { id, ask } = await owner(on);
    for (const payload of [{ isActive: false }, { isOwner: false }]) {
      const answer = await ask({ method: 'PATCH', url: `/api/people/${id}`, payload });
      expect([answer.statusCode, answer.json().error]).toEqual([400, expect.stringContaining('nobody would be left')]);
    }
    expect((await ask({ url: '/api/people' })).statusCode).toBe(200);
  });

  test('a handed-over password opens nothing but choosing an own one, and only for a week', async () => {
    const on = await served();
    const { ask } = await owner(on);
    const made = (await ask(post('/api/people', { name: 'A. Marsh', role: 'nurse' }))).json();
    const signIn = () => on.app.inject(post('/api/session', { name: 'A. Marsh', password: made.password }));
    const nurse = asking(on.app, (await signIn()).cookies[0]?.value ?? '');
    expect((await nurse({ url: '/api/cases' })).json().error).toContain('password of your own');
    const put = { method: 'PUT', url: '/api/account/password' } as const;
    expect((await nurse({ ...put, payload: { current: made.password, next: 'short' } })).statusCode).toBe(400);
    expect((await nurse({ ...put, payload: { current: made.password, next: PASSWORD } })).statusCode).toBe(200);
    expect((await nurse({ url: '/api/cases' })).statusCode).toBe(200);
    const late = (await ask(post('/api/people', { name: 'L. Ates', role: 'nurse' }))).json();
    later(8 * 24 * HOUR_MS);
    const tooLate = await on.app.inject(post('/api/session', { name: 'L. Ates', password: late.password }));
    expect(tooLate.statusCode).toBe(401);
  });
});

describe('pages of other sites', () => {
  const change = { method: 'POST', url: '/api/empty' } as const;

  test('with the cookie, but from another origin, without our header, or as the browser says cross-site: refused', async () => {
    const on = await served();
    const { ask } = await owner(on);
    for (const headers of [{ origin: 'http://elsewhere.test' }, { origin: 'null' }, { 'sec-fetch-site': 'cross-site' }])
      expect((await ask({ ...change, headers })).statusCode).toBe(403);
    const token = (await on.app.inject(post('/api/session', { name: 'R. Fenn', password: PASSWORD }))).cookies[0]
      ?.value;
    const bare = await on.app.inject({ ...change, cookies: { bonewright_session: token ?? '' } });
    expect(bare.statusCode).toBe(403);
    expect((await ask({ ...change, headers: { origin: 'http://localhost', host: 'localhost' } })).statusCode).toBe(200);
  });
});

describe('a carer’s link', () => {
  async function linked() {
    const on = await served();
    const { ask } = await owner(on);
    await on.store.append([opened(), note(2)]);
    await on.store.append([{ ...opened(), id: 'case-bbbb-1', caseId: 'case-bbbb' }]);
    const { id } = (await ask(post('/api/people', { name: 'Thornbeck ward', role: 'carer' }))).json();
    await ask({ method: 'PUT', url: `/api/carers/${id}/patients`, payload: { cases: [CASE] } });
    const link = (await ask(post('/api/links', { personId: id, days: 14 }))).json();
    const open = () => on.app.inject(post('/api/session/link', { token: link.token }));
    return { on, ask, link, open };
  }

  test('opens the carer’s own patients and nothing else', async () => {
    const { on, open } = await linked();
    const carer = asking(on.app, (await open()).cookies[0]?.value ?? '');
    const board = (await carer({ url: '/api/cases' })).json();
    expect(board.cases.map(({ caseId }: { caseId: string }) => caseId)).toEqual([CASE]);
    expect((await carer({ url: '/api/cases/case-bbbb/events' })).statusCode).toBe(404);
    expect((await carer({ url: '/api/cases/case-bbbb/events?after=0' })).statusCode).toBe(404);
    expect((await carer({ url: '/api/people' })).statusCode).toBe(403);
    const event = { ...note(3, 'Thornbeck ward') };
    const send = (caseId: string, by: string) =>
      carer(post(`/api/cases/${caseId}/events`, { events: [{ ...event, caseId, by }] }));
    expect((await send('case-bbbb', 'Thornbeck ward')).statusCode).toBe(403);
    expect((await send(CASE, 'R. Fenn')).statusCode).toBe(403);
    expect((await send(CASE, 'Thornbeck ward')).statusCode).toBe(200);
  });

  test('opens no file of another’s patient', async () => {
    const { on, ask, open } = await linked();
    const headers = { 'content-type': 'application/octet-stream' };
    const sent = await ask({ method: 'POST', url: '/api/attachments', payload: Buffer.from('a film'), headers });
    const url = `/api/attachments/${sent.json().sha256}`;
    const carer = asking(on.app, (await open()).cookies[0]?.value ?? '');
    expect([(await ask({ url })).statusCode, (await carer({ url })).statusCode]).toEqual([200, 404]);
  });

  test('taken back, its sessions end with it; run out, it opens nothing', async () => {
    const { on, ask, link, open } = await linked();
    const carer = asking(on.app, (await open()).cookies[0]?.value ?? '');
    expect((await ask({ method: 'DELETE', url: `/api/links/${link.id}` })).statusCode).toBe(200);
    expect((await carer({ url: '/api/cases' })).statusCode).toBe(401);
    expect((await open()).json().error).toContain('opens nothing any more');
    const other = await linked();
    later(15 * 24 * HOUR_MS);
    expect((await other.open()).statusCode).toBe(401);
  });
});

test('who opened what is written down, once a session', async () => {
  const on = await served();
  await on.store.append([opened(), note(2)]);
  const { ask } = await owner(on);
  for (const query of ['', '?after=1', '']) await ask({ url: `/api/cases/${CASE}/events${query}` });
  const lines = (await on.store.people.log(99, null)).filter(({ what }) => what === 'opened case');
  expect(lines).toMatchObject([{ who: 'R. Fenn', about: CASE, address: '127.0.0.1' }]);
});

describe('passwords', () => {
  test('cost what OWASP asks for (scrypt N = 2^17, r = 8, p = 1), and a hash says so', async () => {
    expect(OWASP_SCRYPT).toEqual({ N: 131072, r: 8, p: 1 });
    const passwords = new Passwords();
    const hash = await passwords.hash(PASSWORD);
    expect(hash).toMatch(/^scrypt\$131072\$8\$1\$/);
    expect([await passwords.isRight(PASSWORD, hash), await passwords.isRight('another', hash)]).toEqual([true, false]);
  });

  test.each(['short', 'aaaaaaaaaaaaaa', 'r. fenn r. fenn', 'bonewright2026', 'x'.repeat(129)])(
    'refused with what would do: %s',
    (password) => {
      expect(() => requireGoodPassword(password, 'R. Fenn')).toThrow(/12 characters or more/);
    },
  );
});

test('too many requests from one address wait; this machine without accounts does not', async () => {
  const on = await served(undefined, { requestsPerMinute: 5 });
  for (let i = 0; i < 8; i += 1) expect((await on.app.inject('/api/cases')).statusCode).toBe(200);
  const { ask } = await owner(on);
  const answers = [];
  for (let i = 0; i < 6; i += 1) answers.push((await ask({ url: '/api/cases' })).statusCode);
  expect(answers.at(-1)).toBe(429);
});
