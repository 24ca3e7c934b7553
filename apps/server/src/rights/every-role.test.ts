/** Every route by every role, and every kind of event by every role, over HTTP; from the lists themselves. */
import {
  type CaseEvent,
  checkEvent,
  type EventKind,
  eventSchema,
  type Holder,
  mayRecord,
  RIGHTS,
  ROLES,
  type Role,
  refusalOf,
} from '@bonewright/casebook';
import type { InjectOptions } from 'fastify';
import { describe, expect, test } from 'vitest';
import { type Ask, asking, owner, somebody } from '../test/people.ts';
import { CASE, opened, type Served, served } from '../test/served.ts';
import type { RouteRight } from './every-route.ts';

type Who = Role | 'owner' | 'nobody';
const WHO: readonly Who[] = [...ROLES, 'owner', 'nobody'];

async function everybody(on: Served): Promise<Record<Who, Ask>> {
  const boss = await owner(on);
  // An owner who holds the least of roles, so that what the flag alone gives is seen.
  const plain = await somebody(on, 'carer', [CASE]);
  await on.store.people.change(plain.id, { isOwner: true });
  const asks = await Promise.all(
    ROLES.map(async (role) => [role, (await somebody(on, role, role === 'carer' ? [CASE] : null)).ask]),
  );
  expect((await boss.ask({ url: '/api/session' })).json()).toMatchObject({ accounts: true });
  return { ...Object.fromEntries(asks), owner: plain.ask, nobody: asking(on.app, null) };
}

/** As the table reads, said again in the plainest way: the owner of this test has the role of a carer. */
function isAllowed(who: Who, { right }: RouteRight): boolean {
  const holders: readonly Holder[] = RIGHTS[right].holders;
  if (holders.includes('anybody')) return true;
  if (who === 'nobody') return false;
  if (holders.includes('anybody signed in')) return true;
  return who === 'owner' ? holders.includes('owner') || holders.includes('carer') : holders.includes(who);
}

/** Asks with nothing that a handler would take: an allowed one gets past the gate and is refused later, or answered. */
function requestOf({ method, url }: RouteRight): InjectOptions {
  const path = url.replace(':sha256', '0'.repeat(64)).replace(/:\w+/g, 'nobody-here').replace('*', 'icon.svg');
  return { method: method as 'GET', url: path, ...(method === 'GET' || method === 'HEAD' ? {} : { payload: {} }) };
}

test('every route by every role: refused where the table says so, and only there', async () => {
  const on = await served();
  const asks = await everybody(on);
  const wrong: string[] = [];
  // Ending the session, or answering for ever, would spoil the rest; both have tests of their own.
  const spoils = (r: RouteRight) => r.url === '/api/events' || (r.method === 'DELETE' && /session/.test(r.url));
  for (const route of on.app.routeRights.filter((r) => r.method !== 'HEAD' && !spoils(r))) {
    for (const who of WHO) {
      const answer = await asks[who](requestOf(route));
      const isPast = answer.statusCode !== 401 && answer.statusCode !== 403;
      const isOwnRefusal = /no password|do not fit|opens nothing|already/.test(answer.body);
      if (isPast !== isAllowed(who, route) && !isOwnRefusal)
        wrong.push(`${route.method} ${route.url} as ${who}: ${answer.statusCode} ${answer.body.slice(0, 90)}`);
      expect(answer.statusCode).toBeLessThan(500);
      if (who === 'nobody' && !isAllowed(who, route)) expect(answer.statusCode).toBe(401);
    }
  }
  expect(wrong).toEqual([]);
  expect(on.app.routeRights.length).toBeGreaterThan(20);
});

test('listening, and ending sessions, ask for somebody signed in', async () => {
  const on = await served();
  const asks = await everybody(on);
  for (const request of [
    { url: '/api/events' },
    { method: 'DELETE', url: '/api/session' },
    { method: 'DELETE', url: '/api/account/sessions' },
  ] as const)
    expect((await asks.nobody(request)).statusCode).toBe(401);
});

const KINDS = eventSchema.options.map((option): EventKind => option.shape.kind.value);

describe.each(ROLES)('%s', (role) => {
  test.each(KINDS)('%s is refused or let through as the table says', (kind) => {
    const subject = { name: 'A. Marsh', role, isOwner: false, cases: null, mustChoosePassword: false };
    const because = refusalOf(subject, { kind, by: 'A. Marsh', caseId: CASE });
    expect(because === null).toBe(mayRecord(role, kind));
  });
});

test('over HTTP: what a role may not record is 403 in words and leaves no trace; what it may is there', async () => {
  const on = await served();
  await on.store.append([opened()]);
  await owner(on);
  for (const role of ROLES) {
    const { name, ask } = await somebody(on, role, role === 'carer' ? [CASE] : null);
    const send = (event: CaseEvent) =>
      ask({ method: 'POST', url: `/api/cases/${CASE}/events`, payload: { events: [event] } });
    const seq = (await on.store.read(CASE)).length + 1;
    const head = { schema: 1, caseId: CASE, seq, at: '2026-11-25T23:10:00Z', by: name } as const;
    const say = (more: object) => checkEvent({ ...head, ...more });
    const decided = await send(say({ id: `fx-${seq}-aaaa`, kind: 'soft-tissue-set', payload: { softTissueMm: [] } }));
    const isTheirs = mayRecord(role, 'soft-tissue-set');
    expect([role, decided.statusCode]).toEqual([role, isTheirs ? 200 : 403]);
    if (!isTheirs) expect(decided.json().error).toContain(`you are signed in as ${role}`);
    const next = (await on.store.read(CASE)).length + 1;
    const note = { id: `nt-${next}-aaaa`, seq: next, kind: 'note-added', payload: { text: 'eats', stage: null } };
    expect((await send(say({ ...note, by: 'T. Okafor' }))).statusCode).toBe(403);
    expect((await send(say(note))).statusCode).toBe(200);
  }
});
