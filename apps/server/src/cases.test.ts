import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CASE, note, opened, served } from './test/served.ts';

const url = `/api/cases/${CASE}/events`;

describe('events over HTTP', () => {
  test('sent, acknowledged, read back, and on the board', async () => {
    const { app } = await served();
    const events = [opened(), note(2)];
    const sent = await app.inject({ method: 'POST', url, payload: { events } });
    expect([sent.statusCode, sent.json()]).toEqual([200, { seq: 2, position: 2, added: 2 }]);
    expect((await app.inject(url)).json()).toEqual({ events });
    expect((await app.inject(`${url}?after=1`)).json()).toEqual({ events: [events[1]] });
    expect((await app.inject('/api/cases')).json()).toMatchObject({
      cases: [{ caseId: CASE, number: '26-041', species: 'tawny owl', stage: 'admission', seq: 2 }],
      nextNumber: expect.stringMatching(/^\d\d-\d{3}$/),
    });
  });

  test('sent twice (the answer was lost on the way) is recorded once', async () => {
    const { app } = await served();
    const payload = { events: [opened(), note(2)] };
    await app.inject({ method: 'POST', url, payload });
    const again = await app.inject({ method: 'POST', url, payload });
    expect(again.json()).toMatchObject({ seq: 2, added: 0 });
  });

  test('somebody else was first: 409 with what was missed, and nothing of mine recorded', async () => {
    const { app } = await served();
    await app.inject({ method: 'POST', url, payload: { events: [opened(), note(2, 'T. Okafor')] } });
    const mine = await app.inject({ method: 'POST', url, payload: { events: [note(2, 'R. Fenn')] } });
    expect(mine.statusCode).toBe(409);
    expect(mine.json()).toMatchObject({ seq: 2, missed: [note(2, 'T. Okafor')] });
    expect((await app.inject(url)).json().events).toHaveLength(2);
  });

  test.each([
    [
      'a mass of nothing',
      { events: [{ ...opened(), payload: { ...opened().payload, massG: 0 } }] },
      'events.0.payload.massG',
    ],
    ['nobody signed', { events: [opened(), { ...note(2), by: '' }] }, 'events.1.by'],
    ['no events', { events: [] }, 'events'],
    ['another case than the address', { events: [{ ...opened(), caseId: 'case-bbbb' }] }, 'events'],
    ['a case that was never opened', { events: [note(1)] }, 'events'],
    ['not even an object', [1, 2], ''],
  ])('bad input is 400 with one line and its place: %s', async (_, payload, path) => {
    const { app } = await served();
    const answer = await app.inject({ method: 'POST', url, payload });
    expect(answer.statusCode).toBe(400);
    const { error, path: where = '' } = answer.json();
    expect(error).toMatch(/^[^\n]{10,}$/);
    expect(where).toBe(path);
    expect((await app.inject('/api/cases')).json().cases).toEqual([]);
  });

  test.each([
    ['no JSON', '{"events": [', 'application/json', 400],
    ['a form', 'events=1', 'application/x-www-form-urlencoded', 415],
    [
      'more than a record could be',
      JSON.stringify({ events: ['x'.repeat(17 * 1024 * 1024)] }),
      'application/json',
      413,
    ],
  ])('%s is refused before it is read', async (_, payload, type, status) => {
    const { app } = await served();
    const answer = await app.inject({ method: 'POST', url, payload, headers: { 'content-type': type } });
    expect(answer.statusCode).toBe(status);
    expect(answer.json().error).toMatch(/\S/);
  });

  test('a case nobody has is 404 in words', async () => {
    const { app } = await served();
    const answer = await app.inject('/api/cases/case-none/events');
    expect([answer.statusCode, answer.json().error]).toEqual([404, expect.stringContaining('no such case')]);
  });
});

describe('faults', () => {
  test('one of ours: 500 with a number that stands in the log, nothing of its inside in the answer', async () => {
    const { app, logged } = await served((store) => ({
      ...store,
      append: () => Promise.reject(new Error('the secret inside')),
    }));
    const answer = await app.inject({ method: 'POST', url, payload: { events: [opened()] } });
    expect(answer.statusCode).toBe(500);
    const { error, id } = answer.json();
    expect(error).toContain(id);
    expect(error).toContain('Nothing that was recorded is lost');
    expect(answer.body).not.toContain('secret');
    expect(logged.join('')).toContain(id);
    expect(logged.join('')).toContain('the secret inside');
  });
});

test('whatever is sent, the answer is never a fault of ours, and nothing is half recorded', async () => {
  const { app, store } = await served();
  await store.append([opened()]);
  const good = fc.constantFrom(opened(), note(2), note(3), note(2, 'T. Okafor'));
  const key = fc.constantFrom('kind', 'payload', 'seq', 'caseId', 'at', 'schema', 'id', 'by', 'why', '__proto__', 'x');
  const spoilt = fc.tuple(good, key, fc.jsonValue()).map(([event, at, value]) => ({ ...event, [at]: value }));
  const events = fc.array(fc.oneof(good, spoilt, fc.jsonValue()), { maxLength: 4 });
  const payload = fc
    .oneof(
      events.map((list) => ({ events: list })),
      fc.jsonValue(),
    )
    .map((body) => JSON.stringify(body));
  const headers = { 'content-type': 'application/json' };
  await fc.assert(
    fc.asyncProperty(payload, async (body) => {
      const before = (await store.read(CASE)).length;
      const answer = await app.inject({ method: 'POST', url, payload: body, headers });
      expect([200, 400, 409]).toContain(answer.statusCode);
      const recorded = (await store.read(CASE)).length - before;
      expect(recorded).toBe(answer.statusCode === 200 ? answer.json().added : 0);
    }),
    { numRuns: 300 },
  );
  expect(await store.verify()).toEqual([]);
});

describe('the demonstration', () => {
  test('begin empty takes out the demonstration only, and says how many', async () => {
    const { app, store } = await served();
    await store.append([opened(true)]);
    const other = { ...opened(), id: 'case-real-1', caseId: 'case-real' };
    await store.append([other]);
    expect((await app.inject({ method: 'POST', url: '/api/empty' })).json()).toEqual({ removed: 1 });
    expect((await app.inject('/api/cases')).json().cases).toMatchObject([{ caseId: 'case-real' }]);
  });
});
