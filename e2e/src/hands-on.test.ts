/**
 * From two dropped films to a printed plan: how many actions it takes, with the mouse and with the keys alone. Counted in
 * the page itself: each press of the mouse or of a key, a key held down or pressed again and again for the same thing
 * being one action. Seconds of hands-on work by the keystroke-level model (Card, Moran and Newell 1983; from memory):
 * 1.1 s to point, 0.2 s to press; a key that is held repeats 30 times a second after half a second. Reading and thinking
 * are not in it, nor what the machine takes.
 */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, launch } from './browser.ts';
import { SQUIRREL } from './film-hand.ts';
import { drop, FILMS, markByKeys, markByMouse, startCase } from './film-job.ts';

interface Did {
  readonly presses: number;
  /** Runs of one key. */
  readonly keys: readonly { readonly key: string; readonly times: number }[];
}

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

async function counted(): Promise<Page> {
  const page = await browser.newPage({ viewport: DESK });
  page.setDefaultTimeout(30_000);
  await startCase(page);
  await page.evaluate(() => {
    const did = { presses: 0, keys: [] as { key: string; times: number }[] };
    Object.assign(window, { did });
    window.addEventListener('pointerdown', () => (did.presses += 1), true);
    const pressed = ({ key }: KeyboardEvent) => {
      const last = did.keys.at(-1);
      if (last && last.key === key) last.times += 1;
      else if (key !== 'Shift') did.keys.push({ key, times: 1 });
    };
    window.addEventListener('keydown', pressed, true);
  });
  return page;
}

const didOn = (page: Page): Promise<Did> => page.evaluate(() => (window as unknown as { did: Did }).did);

const POINT_S = 1.1;
const PRESS_S = 0.2;
const HELD_S = 0.5;
const REPEATS_PER_S = 30;

const handsOnS = ({ presses, keys }: Did): number =>
  presses * (POINT_S + PRESS_S) +
  keys.reduce((sum, { times }) => sum + Math.min(times * PRESS_S, HELD_S + times / REPEATS_PER_S), 0);

async function printed(page: Page, press: (name: string | RegExp) => Promise<void>): Promise<void> {
  await press('Make a plan');
  await press(/^Rank/);
  await page.getByRole('button', { name: /shown/ }).waitFor({ timeout: 60_000 });
  await page.getByText(/Full figures/).waitFor();
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await press('Sheet 1:1');
  expect((await coming).suggestedFilename()).toMatch(/theatre-sheet.*\.pdf$/);
}

test('with the mouse: fewer than 40 actions, at most 60 s of hands-on work', async () => {
  const page = await counted();
  await drop(page);
  for (const film of SQUIRREL) await markByMouse(page, film);
  await page.getByText('True bend').waitFor();
  await printed(page, (name) => page.getByRole('button', { name }).last().click());
  const did = await didOn(page);
  // The drop is an action too: pointing, holding, pointing, letting go.
  const actions = 1 + did.presses + did.keys.length;
  expect(actions).toBeLessThan(40);
  expect(handsOnS(did) + 2 * POINT_S + PRESS_S).toBeLessThanOrEqual(60);
  await page.close();
}, 120_000);

test('with the keys alone: no press of the mouse, each mark at most four ways and one Enter', async () => {
  const page = await counted();
  const choosing = page.waitForEvent('filechooser');
  await page.getByLabel('Choose files').focus();
  await page.keyboard.press('Enter');
  await (await choosing).setFiles(SQUIRREL.map(({ file }) => join(FILMS, file)));
  await page.getByRole('heading', { name: 'b.dcm' }).first().waitFor();
  for (const film of SQUIRREL) await markByKeys(page, film);
  await page.getByText('True bend').waitFor();
  await printed(page, (name) => page.getByRole('button', { name }).last().press('Enter'));
  const did = await didOn(page);
  expect(did.presses).toBe(0);
  const marks = SQUIRREL.reduce(
    (sum, { ends, four, fracture }) => sum + ends.length + 1 + four.length + fracture.length,
    0,
  );
  expect(did.keys.length).toBeLessThan(40 + 5 * marks);
  expect(handsOnS(did)).toBeLessThanOrEqual(120);
  await page.close();
}, 180_000);
