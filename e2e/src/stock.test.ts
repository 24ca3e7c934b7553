/** The practice's stock by hand: put in, used up by a plan in theatre, counted again with a reason, a batch of putty tested. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch, PHONE } from './browser.ts';
import { freshDemonstration } from './demonstration.ts';

const CASE = 'demo-squirrel';
const SHOTS = process.env.BONEWRIGHT_SHOTS;

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
  await freshDemonstration(inject('address'), CASE);
}, 300_000);
afterAll(() => browser.close());

async function open(path: string): Promise<Page> {
  const page = await browser.newPage({ viewport: DESK });
  await page.addInitScript(() => localStorage.setItem('bonewright.signer', 'T. Okafor'));
  await page.goto(inject('address') + path);
  return page;
}

const left = async (page: Page, item: string, batch: string): Promise<number> => {
  const words = await page
    .getByRole('list', { name: `Batches of ${item}` })
    .getByRole('listitem')
    .filter({ hasText: `batch ${batch}` })
    .locator('.stock-left')
    .textContent();
  return Number.parseFloat(words ?? '');
};

const shot = async (page: Page, name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: join(SHOTS, `${name}.png`), fullPage: true });
};

test('put in by hand, half typed kept; corrected with a reason; low mark and bench test said in words', async () => {
  const page = await open('/stock');
  const form = page.getByRole('form', { name: 'Put something in' });
  await form.getByLabel('What').selectOption('smooth pin');
  await form.getByLabel('Diameter').fill('0.73');
  await page.reload();
  expect(await form.getByLabel('Diameter').inputValue()).toBe('0.73');
  await form.getByLabel('Material').selectOption('titanium');
  await form.getByRole('button', { name: /^Put in as T. Okafor/ }).click();
  await form.getByText('Not put in: say how many pieces').waitFor();
  await form.getByLabel('How much').fill('4');
  await form.getByLabel('Batch, as on the label').fill('T-730');
  await form.getByLabel('Say that it is low at').fill('3');
  await form.getByRole('button', { name: /^Put in as/ }).click();
  await form.getByText('wire 0.73 is in the stock.').waitFor();
  expect(await left(page, 'wire 0.73', 'T-730')).toBe(4);

  await page.getByRole('button', { name: 'Correct wire 0.73, batch T-730' }).click();
  await page.getByLabel('Counted, left').fill('2.5');
  await page.getByText('Pins are counted in whole pieces.').waitFor();
  await page.getByLabel('Counted, left').fill('3');
  await shot(page, 'correct');
  expect(await page.getByRole('button', { name: 'Correct it' }).count()).toBe(1);
  await page.getByRole('button', { name: 'dropped or bent' }).click();
  await page.getByRole('button', { name: 'Correct it' }).click();
  await page.getByText('wire 0.73: low, 3 left.').waitFor();
  await page.getByText('counted, 3 left instead of 4. Why: dropped or bent').waitFor();

  await page.getByRole('button', { name: 'Bench test of epoxy putty, batch P-07' }).click();
  const bar: Readonly<Record<string, string>> = {
    Diameter: '6',
    'Span between the supports': '80',
    'Lengths are read to ±': '0.05',
    'Sags are read to ±': '0.02',
    'Weight 1': '200',
    'Sag 1': '0.11',
    'Weight 2': '400',
    'Sag 2': '0.22',
    'Weight 3': '600',
    'Sag 3': '0.33',
  };
  for (const [label, text] of Object.entries(bar)) await page.getByRole('dialog').getByLabel(label).first().fill(text);
  await shot(page, 'bench-test');
  await page.getByRole('button', { name: 'Use these figures from now on' }).click();
  await page
    .getByText(/modulus .* MPa, not broken\./)
    .first()
    .waitFor();
  expect(await violations(page)).toEqual([]);
  await shot(page, 'stock');
  await page.setViewportSize(PHONE);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  await page.evaluate(() => document.documentElement.setAttribute('data-theme', 'dim'));
  await shot(page, 'stock-phone-dim');
  await page.close();
});

test('a pin that goes in is taken from its batch and says to which patient it went', async () => {
  const stock = await open('/stock');
  const lots = stock.locator('.stock-left');
  await lots.first().waitFor();
  const before = await lots.allTextContents();
  const theatre = await open(`/case/${CASE}/theatre`);
  await theatre.getByRole('button', { name: /P1 is in at/ }).click({ timeout: 90_000 });
  await theatre.getByRole('heading', { name: 'Pin 2 of 6' }).waitFor();
  await stock.getByText('1 used as P1.').first().waitFor({ timeout: 30_000 });
  expect(await lots.allTextContents()).not.toEqual(before);
  await stock.getByRole('link', { name: 'to the patient' }).first().click();
  await stock.waitForURL(`**/case/${CASE}/**`);
  await theatre.close();
  await stock.close();
});
