/** The nurse charts an anaesthetic: one press a reading, also without the network; blood against its volume, checks, the paper, the watch. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { launch, PHONE, TABLET } from './browser.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const CASE = 'case-chart-1';
let browser: Browser;
let server: ServerProcess;
let page: Page;

beforeAll(async () => {
  browser = await launch();
  server = await startServer('--empty');
  const at = new Date().toISOString();
  const payload = {
    ...{ number: '26-050', species: 'rabbit', name: '', massG: 1000, weighedAt: at, ageClass: 'adult' },
    ...{ sex: 'female', bone: 'tibia', side: 'left' },
  };
  const opened = {
    schema: 1,
    id: 'event-chart-1',
    caseId: CASE,
    seq: 1,
    at,
    by: 'A. Marsh',
    kind: 'case-opened',
    payload,
  };
  await fetch(`${server.address}/api/cases/${CASE}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: server.address },
    body: JSON.stringify({ events: [opened] }),
  });
  page = await browser.newPage({ viewport: TABLET });
  await page.addInitScript(() => localStorage.setItem('bonewright.signer', 'A. Marsh'));
  await page.goto(`${server.address}/case/${CASE}/theatre`);
  await page.getByRole('button', { name: 'Chart', exact: true }).click();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test('what was read is recorded, what was not stays out; the next reading is one press, away from the network too', async () => {
  await page.getByRole('button', { name: 'Induction' }).click();
  await page.getByRole('textbox', { name: /^Heart/ }).fill('231');
  await page.getByRole('textbox', { name: /^Temperature/ }).fill('38.4');
  await page.getByRole('button', { name: 'Record the reading' }).click();
  await page.getByText('2 as last time').waitFor();
  await page.context().setOffline(true);
  await page.getByRole('button', { name: 'Heart: 5 /min more' }).click();
  await page.getByRole('button', { name: 'Record the reading' }).click();
  await page.getByRole('img', { name: /^2 readings; .*Heart 236 \/min, Temperature 38.4 °C$/ }).waitFor();
  await page.getByText(/kept on this tablet/).waitFor();
  await page.context().setOffline(false);
  await page.getByText(/, saved/).waitFor({ timeout: 30_000 });
});

test('blood in swabs: 8 g gained are 8 ml, 15 % of the 55 ml that a rabbit of 1 kg is thought to have', async () => {
  await page.getByLabel('or swabs, wet').fill('12');
  await page.getByLabel('as many swabs, dry').fill('4');
  await page.getByRole('button', { name: 'Add the loss' }).click();
  await page.getByText('8 ml, 15 %').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  await page.waitForFunction(() => document.documentElement.scrollWidth <= innerWidth);
  await page.setViewportSize(TABLET);
});

test('what is not done needs a reason', async () => {
  await page.getByRole('button', { name: 'Checks' }).click();
  await page.getByRole('button', { name: /^Not done: Tubes/ }).click();
  const dialog = page.getByRole('dialog');
  expect(await dialog.getByRole('button', { name: 'Not done', exact: true }).isDisabled()).toBe(true);
  await dialog.getByLabel('Why').fill('mask only');
  await dialog.getByRole('button', { name: 'Not done', exact: true }).click();
  await page.getByText('mask only, A. Marsh').waitFor();
  expect(await violations(page)).toEqual([]);
});

test('the chart is printed; the watch begins with waking; fluids and feed are planned from figures that a person chose', async () => {
  await page.goto(`${server.address}/case/${CASE}/recovery`);
  await page.getByRole('button', { name: 'It righted itself now' }).click();
  await page.getByText('since waking').first().waitFor();
  await page.getByLabel('Dryness, as judged').fill('10');
  await page.getByRole('button', { name: 'Take 72' }).click();
  await page.getByLabel('Made good over').fill('24');
  await page.getByLabel('Giving set').fill('60');
  await page.getByText('7.2 ml/h').waitFor();
  await page.getByLabel('Times, as you choose it').fill('1');
  await page.getByLabel('Its energy, from the packet').fill('350');
  await page.getByLabel('Meals a day').fill('4');
  await page.getByText('20 g a day').waitFor();
  expect(await violations(page)).toEqual([]);
  expect((await page.request.get(`${server.address}/api/cases/${CASE}/papers/chart`)).status()).toBe(200);
});
