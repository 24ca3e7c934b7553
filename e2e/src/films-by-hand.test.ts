/** Two films from the drop to a reduced bone, once with the mouse and once with the keys alone; two other devices see the same. */
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch } from './browser.ts';
import { plate, SQUIRREL } from './film-hand.ts';
import { boxOf, drop, FILMS, markByKeys, markByMouse, startCase } from './film-job.ts';

let browser: Browser;
const faults: string[] = [];

beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

async function freshPage(): Promise<Page> {
  const page = await browser.newPage({ viewport: DESK });
  page.setDefaultTimeout(20_000);
  page.on('pageerror', (error) => faults.push(error.message));
  return page;
}

test('mouse: dropped, calibrated, traced, a wall corrected, reduced, measured; another device has it all', async () => {
  const page = await freshPage();
  await startCase(page);
  await drop(page);
  for (const film of SQUIRREL) {
    await markByMouse(page, film);
  }
  await page.getByText('True bend').waitFor();

  const steps = await openSteps(page, 'Craniocaudal');
  await steps.getByRole('button', { name: 'correct a wall' }).click();
  const before = await steps.locator('.correct-station').textContent();
  await drag(page, page.getByRole('button', { name: /outer wall, one side/ }), [-4, 0]);
  await expect.poll(() => steps.locator('.correct-station').textContent()).not.toBe(before);
  await steps.getByRole('button', { name: 'done', exact: true }).click();
  await steps.getByText('1 correction stands').waitFor();

  await steps.getByRole('button', { name: 'length', exact: true }).click();
  const box = await boxOf(plate(page, /craniocaudal/));
  await page.mouse.click(box.x + 150, box.y + 200);
  await page.mouse.click(box.x + 150, box.y + 300);
  await steps.getByText(/^A length/).waitFor();

  await page.getByRole('button', { name: 'Reduce on the screen' }).click();
  const bend = await left(page, 'Bent, craniocaudal');
  expect(bend).toBeGreaterThan(5);
  const film = page.getByRole('application', { name: 'craniocaudal film, distal part' });
  await film.locator('circle').last().waitFor();
  const handle = film.locator('circle').last();
  // The distal part leans to one side: towards the other its bend falls.
  const towards = (await page.getByRole('row', { name: /^Bent, craniocaudal/ }).textContent())?.includes('laterally');
  await drag(page, handle, [towards ? 40 : -40, 0]);
  expect(await left(page, 'Bent, craniocaudal')).toBeLessThan(bend - 2);
  await page.keyboard.press('z');
  expect(await left(page, 'Bent, craniocaudal')).toBe(bend);
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'in one line' }).click();
  expect(await left(page, 'True bend')).toBe(0);
  expect(await left(page, 'Shifted, together')).toBe(0);
  await page.getByRole('button', { name: 'Keep this bone for the plan' }).click();
  await page.getByRole('button', { name: 'Kept for the plan' }).waitFor();

  await page.getByText(/saved/).first().waitFor();
  const other = await browser.newContext({ viewport: DESK });
  const there = await other.newPage();
  await there.goto(page.url());
  const theirs = await openSteps(there, 'Craniocaudal');
  await theirs.getByText(/^A length/).waitFor();
  await there.getByText(/Kept for the plan: 0\.0° of bend, 0\.0 mm of shift/).waitFor();
  await other.close();
  expect(faults).toEqual([]);
  await page.close();
}, 120_000);

test('keys alone: the same', async () => {
  const page = await freshPage();
  await startCase(page);
  const choosing = page.waitForEvent('filechooser');
  await page.getByLabel('Choose files').focus();
  await page.keyboard.press('Enter');
  await (await choosing).setFiles(SQUIRREL.map(({ file }) => join(FILMS, file)));
  await page.getByRole('heading', { name: 'b.dcm' }).first().waitFor();
  for (const film of SQUIRREL) await markByKeys(page, film);
  await page.getByText('True bend').waitFor();

  const steps = await openSteps(page, 'Craniocaudal');
  await steps.getByRole('button', { name: 'correct a wall' }).press('Enter');
  const before = await steps.locator('.correct-station').textContent();
  await page.getByRole('button', { name: /outer wall, one side/ }).focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
  await expect.poll(() => steps.locator('.correct-station').textContent()).not.toBe(before);
  await steps.getByRole('button', { name: 'done', exact: true }).press('Enter');

  await steps.getByRole('button', { name: 'angle', exact: true }).press('Enter');
  const film = plate(page, /craniocaudal/);
  await expect.poll(() => film.evaluate((it) => it === document.activeElement)).toBe(true);
  for (const keys of [
    ['ArrowUp', 'ArrowUp'],
    ['ArrowLeft', 'ArrowLeft', 'ArrowLeft'],
    ['ArrowDown', 'ArrowDown'],
  ]) {
    for (const key of keys) await page.keyboard.press(key);
    await page.keyboard.press('Enter');
  }
  await steps.getByText(/^A angle/).waitFor();

  await page.getByRole('button', { name: 'Reduce on the screen' }).press('Enter');
  const reduced = page.getByRole('application', { name: 'craniocaudal film, distal part' });
  await reduced.focus();
  const [bend, shift] = [await left(page, 'Bent, craniocaudal'), await left(page, 'Shifted, craniocaudal')];
  await page.keyboard.press('.');
  await page.keyboard.press('ArrowRight');
  expect(Math.abs((await left(page, 'Bent, craniocaudal')) - bend)).toBeCloseTo(0.5, 1);
  expect(Math.abs((await left(page, 'Shifted, craniocaudal')) - shift)).toBeCloseTo(0.1, 1);
  await page.getByRole('button', { name: 'in one line' }).press('Enter');
  await page.getByRole('button', { name: 'Keep this bone for the plan' }).press('Enter');
  await page.getByRole('button', { name: 'Kept for the plan' }).waitFor();
  // Another in its place has to say why.
  await reduced.focus();
  await page.keyboard.press('.');
  await page.getByRole('button', { name: 'Keep this bone for the plan' }).press('Enter');
  const ask = page.getByRole('dialog', { name: 'Another reduction was kept before' });
  await ask.getByLabel('Why').fill('tried only');
  await ask.getByRole('button', { name: 'Keep this one' }).press('Enter');
  await page.getByRole('button', { name: 'Kept for the plan' }).waitFor();
  expect(faults).toEqual([]);
  await page.close();
}, 180_000);

async function openSteps(page: Page, title: string): Promise<Locator> {
  const steps = page.locator('details.steps-frame').filter({ has: page.getByRole('heading', { name: title }) });
  await steps.waitFor();
  if (!(await steps.evaluate((it: HTMLDetailsElement) => it.open))) {
    await steps.locator('summary').first().focus();
    await page.keyboard.press('Enter');
  }
  return steps;
}

async function drag(page: Page, what: Locator, [dx, dy]: readonly [number, number]): Promise<void> {
  const box = await boxOf(what);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 3 });
  await page.mouse.move(x + dx, y + dy, { steps: 3 });
  await page.mouse.up();
}

/** What is left now, as the table has it. */
async function left(page: Page, what: string): Promise<number> {
  const row = page.getByRole('row', { name: new RegExp(`^${what}`) });
  return Number(await row.locator('.findings-value').textContent());
}
