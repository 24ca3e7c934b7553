/** The main job in a real browser: two films dropped, measured, planned, printed; reloaded on the way. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { DESK, launch } from './browser.ts';
import { clickFilm, type FilmClicks, SQUIRREL } from './film-hand.ts';
import { longestRowMm, rasterPage } from './ink.ts';

const FILMS = join(import.meta.dirname, '../films');
let browser: Browser;
let page: Page;
let folder: string;
const faults: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bonewright-job-'));
  browser = await launch();
  page = await browser.newPage({ viewport: DESK });
  page.setDefaultTimeout(30_000);
  page.on('pageerror', (error) => faults.push(error.message));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

test('a case is started by keyboard and survives a reload', async () => {
  await page.goto(`${inject('address')}/new`);
  await page.getByLabel('Species').focus();
  await page.keyboard.type('red squirrel');
  await page.getByLabel(/^Mass/).fill('310');
  await page.getByLabel('Broken bone').fill('tibia');
  await page.reload();
  expect(await page.getByLabel('Species').inputValue()).toBe('red squirrel');
  await page.getByRole('radio', { name: 'left' }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Start the case' }).press('Enter');
  await page.getByRole('heading', { name: /Red squirrel/ }).waitFor();
  await page.reload();
  await page.getByText('310 g').waitFor();
});

test('a text file dropped as a film is refused beside the drop, and nothing else is lost', async () => {
  await drop([{ name: 'words.dcm', bytes: Buffer.from('these are words, not a film') }]);
  await page
    .getByText(/words\.dcm/)
    .first()
    .waitFor();
  await page.getByRole('heading', { name: /Red squirrel/ }).waitFor();
});

test('two films are dropped, and each is measured with a ball, four clicks and a fracture line', async () => {
  await drop(SQUIRREL.map(({ file }) => ({ name: file, bytes: readFileSync(join(FILMS, file)) })));
  await page.getByRole('heading', { name: 'b.dcm' }).first().waitFor();
  for (const [i, film] of SQUIRREL.entries()) await measure(film, i);
  const says = page.getByRole('region', { name: 'What the films say' });
  await says.getByText('True bend').waitFor();
  expect(await figureOf('Bent, seen craniocaudal')).toBeCloseTo(10.6, 0);
  expect(await figureOf('Bent, seen mediolateral')).toBeCloseTo(7.5, 0);
  await page.reload();
  await says.getByText('True bend').waitFor();
  expect(await figureOf('Bent, seen craniocaudal')).toBeCloseTo(10.6, 0);
});

test('plans are ranked from the drawer, and a pin moved by key changes the margins until it is undone', async () => {
  await page.getByRole('button', { name: 'Make a plan' }).last().click();
  await page.getByRole('button', { name: /^Rank/ }).click();
  await page.getByRole('button', { name: /shown/ }).waitFor({ timeout: 60_000 });
  const margins = page.getByRole('region', { name: 'Margins' });
  await margins.getByText(/Full figures/).waitFor();
  expect(await margins.getByRole('img').count()).toBe(5);
  const pin = page.getByRole('slider', { name: /^P2/ });
  const before = await pin.getAttribute('aria-valuenow');
  await pin.focus();
  await page.keyboard.press('ArrowRight');
  expect(Number(await pin.getAttribute('aria-valuenow'))).toBeCloseTo(Number(before) + 0.5, 6);
  await page.keyboard.press('z');
  expect(await pin.getAttribute('aria-valuenow')).toBe(before);
});

test('the plan is still there after a reload, and its sheet prints at exactly 1:1', async () => {
  await page.reload();
  await page.getByRole('button', { name: /shown/ }).waitFor();
  await page.getByText(/Full figures/).waitFor();
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await page.getByRole('button', { name: 'Sheet 1:1' }).click();
  const pdf = join(folder, 'sheet.pdf');
  await (await coming).saveAs(pdf);
  expect(Math.abs(longestRowMm(rasterPage(pdf), 120) - 100)).toBeLessThanOrEqual(0.2);
  expect(faults).toEqual([]);
});

async function drop(files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<void> {
  const data = files.map(({ name, bytes }) => ({ name, base64: Buffer.from(bytes).toString('base64') }));
  const transfer = await page.evaluateHandle((list) => {
    const dropped = new DataTransfer();
    for (const { name, base64 } of list) {
      const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      dropped.items.add(new File([bytes], name));
    }
    return dropped;
  }, data);
  await page.locator('main label').last().dispatchEvent('drop', { dataTransfer: transfer });
}

async function measure(film: FilmClicks, place: number): Promise<void> {
  const steps = page.locator('details').filter({ has: page.getByRole('radio', { name: film.view, exact: true }) });
  const mine = steps.nth((await steps.count()) > 1 ? place : 0);
  await mine.getByRole('radio', { name: film.view, exact: true }).check({ force: true });
  await mine.getByRole('radio', { name: film.toTheRight, exact: true }).check({ force: true });
  const ball = mine.getByLabel(/Ball across/);
  if ((await ball.inputValue()) === '') await ball.fill('5');
  await mine.getByRole('button', { name: 'proximal', exact: true }).click();
  for (const end of film.ends) await clickFilm(page, film, end);
  await clickFilm(page, film, film.ball);
  for (const click of [...film.four, ...film.fracture]) await clickFilm(page, film, click);
  await page
    .getByRole('region', { name: new RegExp(film.view, 'i') })
    .getByText(/10 mm/)
    .waitFor();
}

async function figureOf(what: string): Promise<number> {
  const row = page.getByRole('row', { name: new RegExp(`^${what}`) });
  return Number(await row.getByRole('cell').first().textContent());
}
