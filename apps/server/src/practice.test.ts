import { checkPracticeEvent, foldPractice, type PracticeEvent } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { served } from './test/served.ts';

const url = '/api/practice/events';
const WIRE = { use: 'pin', diameterMm: 1, kind: 'smooth', material: 'steel-cold-worked' };

function entry(seq: number, kind: string, payload: unknown, by = 'T. Okafor'): PracticeEvent {
  const head = { schema: 1, id: `practice-${by.replace(/\W/g, '')}-${seq}`, caseId: 'practice', seq };
  return checkPracticeEvent({ ...head, at: '2026-11-25T23:10:00Z', by, kind, payload });
}
const described = (demonstration?: true) =>
  entry(1, 'stock-described', { itemId: 'wire 1.0', thing: WIRE, lowAt: 2, ...(demonstration && { demonstration }) });
const received = (seq: number, by?: string) =>
  entry(seq, 'stock-received', { itemId: 'wire 1.0', batch: 'A', amount: 6, expires: null }, by);

test('the practice’s record over HTTP: empty at first, sent, acknowledged, read back', async () => {
  const { app } = await served();
  expect((await app.inject(url)).json()).toEqual({ events: [] });
  const events = [described(), received(2)];
  const sent = await app.inject({ method: 'POST', url, payload: { events } });
  expect([sent.statusCode, sent.json()]).toEqual([200, { seq: 2, position: 2, added: 2 }]);
  expect((await app.inject(`${url}?after=1`)).json()).toEqual({ events: [events[1]] });
  expect((await app.inject('/api/cases')).json().cases).toEqual([]);
});

test('somebody else was first: 409 with what was missed', async () => {
  const { app } = await served();
  await app.inject({ method: 'POST', url, payload: { events: [described(), received(2, 'R. Fenn')] } });
  const mine = await app.inject({ method: 'POST', url, payload: { events: [received(2)] } });
  expect([mine.statusCode, mine.json()]).toMatchObject([409, { seq: 2, missed: [received(2, 'R. Fenn')] }]);
});

test.each([
  ['an event of a case', { events: [{ ...described(), caseId: 'case-aaaa' }] }, 'events.0.caseId'],
  ['a stock of nothing known', { events: [received(1)] }, 'events'],
  ['no events', { events: [] }, 'events'],
])('bad input is 400 with one line and its place: %s', async (_, payload, path) => {
  const { app } = await served();
  const answer = await app.inject({ method: 'POST', url, payload });
  expect([answer.statusCode, answer.json().path]).toEqual([400, path]);
  expect(answer.json().error).toMatch(/^[^\n]{10,}$/);
});

test('begin empty takes the stock of the demonstration out by an entry, and says nothing where there is none', async () => {
  const { app, store } = await served();
  await app.inject({ method: 'POST', url: '/api/empty' });
  expect(await store.practice.read()).toEqual([]);
  await store.practice.append([described(true), received(2)]);
  await app.inject({ method: 'POST', url: '/api/empty' });
  const events = await store.practice.read();
  expect(events.map(({ kind }) => kind).at(-1)).toBe('demonstration-removed');
  expect(foldPractice(events).stock.items).toEqual([]);
});
