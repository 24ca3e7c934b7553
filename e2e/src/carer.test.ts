/** A carer's phone: a link, the own patient only, entries made without the network that arrive later, nothing beyond the rights. */
import type { APIRequestContext, Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { launch, PHONE } from './browser.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const OWN = 'case-carer-1';
const OTHER = 'case-carer-2';
const SHOTS = process.env.BONEWRIGHT_SHOTS;
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==';

let browser: Browser;
let server: ServerProcess;
let owner: APIRequestContext;
let phone: Page;

const headers = () => ({ origin: server.address, 'x-bonewright': '1' });

async function send(method: 'post' | 'put', path: string, data: unknown): Promise<Record<string, string>> {
  const answer = await owner[method](server.address + path, { data, headers: headers() });
  expect(answer.ok(), `${path}: ${await answer.text()}`).toBe(true);
  return answer.json();
}

async function openCase(caseId: string, number: string, species: string): Promise<void> {
  const at = new Date().toISOString();
  const opened = {
    ...{ number, species, name: '', massG: 310, weighedAt: at, ageClass: 'adult', sex: 'female' },
    ...{ bone: 'tibia', side: 'left' },
  };
  const aftercare = {
    tasks: [{ what: 'Fresh bedding', when: 'every morning', doseId: null }],
    ...{ lookFor: ['dry pins'], ringWhen: ['a pin moves'], phone: '01632 960 141', housing: '', recheckOn: null },
  };
  const events = [['case-opened', opened] as const, ['aftercare-planned', aftercare] as const].map(
    ([kind, payload], i) => ({
      ...{ schema: 1, id: `${caseId}-event-${i}`, caseId, seq: i + 1, at, by: 'R. Fenn', kind, payload },
    }),
  );
  await send('post', `/api/cases/${caseId}/events`, { events });
}

beforeAll(async () => {
  browser = await launch();
  server = await startServer('--empty');
  owner = (await browser.newContext()).request;
  await send('post', '/api/session/first', { name: 'R. Fenn', role: 'surgeon', password: 'hedge row under stars' });
  await openCase(OWN, '26-050', 'red squirrel');
  await openCase(OTHER, '26-051', 'rabbit');
  const { id } = await send('post', '/api/people', { name: 'Thornbeck ward', role: 'carer' });
  await send('put', `/api/carers/${id}/patients`, { cases: [OWN] });
  const { token } = await send('post', '/api/links', { personId: id, days: 14 });
  phone = await (await browser.newContext({ viewport: PHONE })).newPage();
  await phone.goto(`${server.address}/carer#${token}`);
  await phone.getByRole('heading', { name: 'Your patients' }).waitFor();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test('just the own patient, and a page that fits, is accessible and says when to ring', async () => {
  await phone.getByRole('link', { name: /Red squirrel 26-050/ }).click();
  await phone.getByRole('heading', { name: 'Red squirrel 26-050' }).waitFor();
  expect(await phone.getByText('26-051').count()).toBe(0);
  expect(await phone.getByRole('link', { name: 'Ring 01632 960 141' }).getAttribute('href')).toBe('tel:01632960141');
  expect(await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(await violations(phone)).toEqual([]);
});

test('away from the network everything is taken and kept, and arrives when it is back', async () => {
  await phone.context().setOffline(true);
  await phone.getByLabel('Mass').fill('318');
  await phone.getByRole('button', { name: 'Record the weight' }).click();
  await phone.getByText('dry', { exact: true }).click();
  await phone.getByRole('button', { name: 'Done: Fresh bedding, every morning' }).click();
  await phone.getByRole('textbox', { name: 'Question' }).fill('May it climb?');
  await phone.getByRole('button', { name: 'Ask' }).click();
  await phone
    .getByLabel('Take or choose a photograph')
    .setInputFiles({ name: 'leg.png', mimeType: 'image/png', buffer: Buffer.from(PIXEL, 'base64') });
  await phone.getByText('The photograph is kept.').waitFor();
  await phone.getByText(/5 entries wait/).waitFor();
  if (SHOTS) await phone.screenshot({ path: `${SHOTS}/carer-offline.png`, fullPage: true });
  await phone.context().setOffline(false);
  await phone.getByText(/, saved/).waitFor({ timeout: 30_000 });
  const answer = await owner.get(`${server.address}/api/cases/${OWN}/events`);
  const { events } = (await answer.json()) as {
    events: { kind: string; by: string; payload: { photo?: { sha256: string } } }[];
  };
  const theirs = events.filter(({ by }) => by === 'Thornbeck ward');
  expect(theirs.map(({ kind }) => kind).sort()).toEqual(
    ['note-added', 'photo-added', 'pin-site-seen', 'question-asked', 'weighed'].sort(),
  );
  const photo = theirs.find(({ kind }) => kind === 'photo-added')?.payload.photo;
  expect((await owner.get(`${server.address}/api/attachments/${photo?.sha256}`)).ok()).toBe(true);
});

test('an answer of the vet stands on the page', async () => {
  const answer = await owner.get(`${server.address}/api/cases/${OWN}/events`);
  const { events } = (await answer.json()) as {
    events: { kind: string; seq: number; payload: { questionId?: string } }[];
  };
  const questionId = events.find(({ kind }) => kind === 'question-asked')?.payload.questionId;
  const seq = events.length + 1;
  const payload = { questionId, words: 'Not for two weeks.' };
  const head = { schema: 1, id: 'answer-event-1', caseId: OWN, seq, at: new Date().toISOString(), by: 'R. Fenn' };
  await send('post', `/api/cases/${OWN}/events`, { events: [{ ...head, kind: 'question-answered', payload }] });
  await phone.getByText('Not for two weeks.').waitFor();
});

test('other patients, pages of the practice, doses and papers are refused', async () => {
  const asks = phone.context().request;
  expect((await asks.get(`${server.address}/api/cases/${OTHER}/events`)).ok()).toBe(false);
  expect((await asks.get(`${server.address}/api/cases/${OWN}/papers/chart`)).status()).toBe(403);
  const dose = {
    schema: 1,
    id: 'dose-event-1',
    caseId: OWN,
    seq: 9,
    at: new Date().toISOString(),
    by: 'Thornbeck ward',
  };
  const refused = await asks.post(`${server.address}/api/cases/${OWN}/events`, {
    data: { events: [{ ...dose, kind: 'dose-given', payload: { doseId: 'dose-0001', at: dose.at, note: '' } }] },
    headers: headers(),
  });
  expect(refused.status()).toBe(403);
  for (const path of ['/formulary', '/register', '/new', '/people']) {
    await phone.goto(server.address + path);
    await phone.getByText('This page is for the practice').waitFor();
  }
  await phone.goto(`${server.address}/case/${OWN}/plan`);
  await phone.getByRole('heading', { name: 'Red squirrel 26-050' }).waitFor();
  expect(await phone.getByRole('button', { name: /Sign|plan/ }).count()).toBe(0);
  await phone.goto(`${server.address}/case/${OTHER}`);
  await phone.getByText('not one of yours').waitFor();
});
