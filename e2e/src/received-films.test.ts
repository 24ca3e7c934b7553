/** Films that an X-ray machine (DCMTK's `storescu`) sends: seen at once, matched to a patient by hand, or set aside with a reason. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch } from './browser.ts';
import { machine } from './machines.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const FILMS = join(import.meta.dirname, '../films');
let server: ServerProcess;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  server = await startServer('--empty', '--receive', '127.0.0.1:0', '--aet', 'THEATRE');
  browser = await launch();
  page = await browser.newPage({ viewport: DESK });
  page.setDefaultTimeout(20_000);
  page.on('pageerror', (error) => faults.push(error.message));
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test('the board tells of a film as it comes, without a reload', async () => {
  await page.goto(`${server.address}/`);
  await page.getByRole('heading', { name: 'Patients' }).waitFor();
  await send('a.dcm');
  await page.getByText('1 film waits from the X-ray machine').waitFor();
});

test('it is matched to the patient, and stands on the stage like a film that was dropped', async () => {
  await page.goto(`${server.address}/new`);
  await page.getByLabel('Species').fill('red squirrel');
  await page.getByLabel(/^Mass/).fill('310');
  await page.getByLabel('Broken bone').fill('tibia');
  await page.getByRole('radio', { name: 'left' }).check({ force: true });
  await page.getByRole('button', { name: 'Start the case' }).click();
  await page.getByRole('heading', { name: /Red squirrel/ }).waitFor();
  await page.goto(page.url().replace(/[a-z]+$/, 'films'));
  const waiting = page
    .getByRole('group')
    .filter({ has: page.getByRole('heading', { name: 'From the X-ray machine' }) });
  await waiting.getByText('XRAY1').waitFor();
  expect(await violations(page)).toEqual([]);
  await waiting.getByRole('button', { name: 'Of this patient' }).click();
  await page.getByRole('application', { name: /^film XRAY1/ }).waitFor();
  await waiting.waitFor({ state: 'detached' });
  await page.reload();
  await page.getByRole('application', { name: /^film XRAY1/ }).waitFor();
  expect(await inbox()).toEqual([]);
});

test('another is set aside by keyboard: nothing happens without a reason', async () => {
  await send('b.dcm');
  const waiting = page
    .getByRole('group')
    .filter({ has: page.getByRole('heading', { name: 'From the X-ray machine' }) });
  await waiting.getByRole('button', { name: 'Set aside' }).press('Enter');
  const ask = page.getByRole('dialog', { name: 'Set this film aside' });
  expect(await ask.getByRole('button', { name: 'Set it aside' }).isDisabled()).toBe(true);
  await ask.getByLabel('Why').fill('of another patient');
  await ask.getByRole('button', { name: 'Set it aside' }).press('Enter');
  await waiting.waitFor({ state: 'detached' });
  expect(await inbox()).toEqual([]);
  expect(faults).toEqual([]);
});

async function send(name: string): Promise<void> {
  const { receiving } = await (await fetch(`${server.address}/api/inbox`)).json();
  const to = ['-aet', 'XRAY1', '-aec', 'THEATRE', '127.0.0.1', String(receiving.port)];
  expect(await machine('storescu', ['-xe', ...to, join(FILMS, name)])).toMatchObject({ code: 0 });
}

async function inbox(): Promise<unknown[]> {
  return (await (await fetch(`${server.address}/api/inbox`)).json()).films;
}
