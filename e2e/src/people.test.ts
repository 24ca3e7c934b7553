/** People in a real browser: the first account, a session that ends with entries unsent, a carer's link, and every screen of it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, launch, PHONE } from './browser.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PASSWORD = 'hedge row under stars';
const SHOTS = process.env.BONEWRIGHT_SHOTS;

let browser: Browser;
let server: ServerProcess;
let page: Page;
const violations: string[] = [];

beforeAll(async () => {
  browser = await launch();
  server = await startServer('--empty');
  page = await (await browser.newContext({ viewport: DESK })).newPage();
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) violations.push(message.text());
  });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

/** Fits and is accessible, on desk and phone, on paper and dim. */
async function look(name: string, on = page): Promise<void> {
  for (const [size, viewport] of Object.entries({ desk: DESK, phone: PHONE })) {
    await on.setViewportSize(viewport);
    for (const theme of ['paper', 'dim']) {
      await on.evaluate((to) => {
        document.documentElement.dataset.theme = to;
      }, theme);
      expect(await on.evaluate(() => document.documentElement.scrollWidth - innerWidth), name).toBeLessThanOrEqual(0);
      await on.evaluate(AXE);
      const found = await on.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
      });
      expect(found, `${name} ${size} ${theme}`).toEqual([]);
      if (SHOTS) await on.screenshot({ path: `${SHOTS}/${name}-${size}-${theme}.png`, fullPage: true });
    }
  }
  await on.setViewportSize(DESK);
}

async function signIn(on: Page, name: string, password: string): Promise<void> {
  await on.getByLabel('Name').fill(name);
  await on.getByLabel('Password').fill(password);
  await on.getByRole('button', { name: 'Sign in' }).click();
}

test('first start asks for nothing; the first account is made here, and from then on everybody signs in', async () => {
  await page.goto(server.address);
  await page.getByRole('link', { name: 'People' }).click();
  await page.getByText('Nobody has an account').waitFor();
  await look('first-owner');
  await page.getByLabel('Name').fill('R. Fenn');
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Make the first account' }).click();
  await page.getByRole('heading', { name: 'Accounts' }).waitFor();
  const stranger = await (await browser.newContext({ viewport: DESK })).newPage();
  await stranger.goto(`${server.address}/new`);
  await stranger.getByRole('heading', { name: 'Sign in' }).waitFor();
  await look('sign-in', stranger);
  await signIn(stranger, 'R. Fenn', 'wrong wrong wrong');
  await stranger.getByText('Name and password do not fit').waitFor();
  await stranger.close();
});

test('an entry made after the session ended is kept, and sent once somebody signs in on the same page', async () => {
  await page.goto(`${server.address}/new`);
  await page.getByLabel('Species').fill('tawny owl');
  await page.getByLabel('Broken bone').fill('tibiotarsus');
  await page.getByRole('group', { name: 'Side' }).getByText('right').click();
  await page.getByRole('button', { name: 'Start the case' }).click();
  await page.waitForURL(/\/case\/.*\/films/);
  await page.getByText(/, saved/).waitFor();
  await page.goto(page.url().replace('/films', '/recovery'));
  await page.getByRole('textbox', { name: 'Note' }).waitFor();
  await page.context().clearCookies();
  await page.getByRole('textbox', { name: 'Note' }).fill('ate a mouse at three');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await page.getByText('Your session has ended').waitFor();
  await page.getByText(/1 entry waits/).waitFor();
  await look('ended');
  await page.reload();
  await page.getByText('is kept on this device and is sent once').waitFor();
  await signIn(page, 'R. Fenn', PASSWORD);
  await page.getByText(/, saved/).waitFor();
  const events = await page.evaluate(() =>
    fetch(`/api/cases/${location.pathname.split('/')[2]}/events`).then((r) => r.text()),
  );
  expect(events).toContain('ate a mouse at three');
  expect(JSON.parse(events).events.every(({ by }: { by: string }) => by === 'R. Fenn')).toBe(true);
});

test('signing in above the page sends what waits, without loading it again', async () => {
  await page.context().clearCookies();
  await page.getByRole('textbox', { name: 'Note' }).fill('curls up');
  await page.getByRole('button', { name: 'Add the note' }).click();
  await page.getByText('Your session has ended').waitFor();
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByText(/, saved/).waitFor();
  expect(await page.getByText('Your session has ended').count()).toBe(0);
});

test('an owner makes a carer, gives a patient and a link; the link opens that patient and nothing to manage', async () => {
  await page.goto(`${server.address}/people`);
  await page.getByLabel('Name').fill('Thornbeck ward');
  await page.getByRole('group', { name: 'Role', exact: true }).getByText('carer').click();
  await page.getByRole('button', { name: 'Make the account' }).click();
  await page.getByText('Hand this to Thornbeck ward').waitFor();
  await page.reload();
  await page.getByRole('checkbox', { name: /tawny owl/ }).check();
  await page.getByRole('button', { name: 'Make a link for Thornbeck ward' }).click();
  const address = await page.getByText('/carer#').textContent();
  await look('people');
  const carer = await (await browser.newContext({ viewport: PHONE })).newPage();
  await carer.goto(address ?? '');
  await carer.getByText('Tawny owl').first().waitFor();
  expect(carer.url()).not.toContain('#');
  await carer.goto(`${server.address}/people`);
  await carer.getByText('an owner').waitFor();
  await page.getByRole('button', { name: 'take it back' }).click();
  await page.getByText('a link until').waitFor({ state: 'detached' });
  await carer.goto(server.address);
  await carer.getByRole('heading', { name: 'Sign in' }).waitFor();
  await carer.close();
});

test('a handed-over password opens only the page that asks for an own one', async () => {
  await page.goto(`${server.address}/people`);
  await page.getByLabel('Name').fill('A. Marsh');
  await page.getByRole('button', { name: 'Make the account' }).click();
  const password = (await page.locator('.people-password').textContent()) ?? '';
  const nurse = await (await browser.newContext({ viewport: DESK })).newPage();
  await nurse.goto(server.address);
  await signIn(nurse, 'A. Marsh', password);
  await nurse.getByRole('heading', { name: 'A password of your own' }).waitFor();
  await look('own-password', nurse);
  await nurse.getByLabel('Password so far').fill(password);
  await nurse.getByLabel('New password').fill('three owls in a barn');
  await nurse.getByRole('button', { name: 'Choose it' }).click();
  await nurse.getByRole('link', { name: 'A. Marsh, nurse' }).click();
  await nurse.getByRole('heading', { name: 'Signed in' }).waitFor();
  await look('my-account', nurse);
  await nurse.getByRole('button', { name: 'Sign out', exact: true }).click();
  await nurse.getByRole('heading', { name: 'Sign in' }).waitFor();
  await nurse.close();
});

test('no page asked for a style or script that the content policy forbids', () => {
  expect(violations).toEqual([]);
});
