/** A vet writes a dose, answers what stops it, signs, a nurse gives it, and the papers come out; unsigned nothing does. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch, PHONE } from './browser.ts';
import { freshDemonstration } from './demonstration.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
  await freshDemonstration(inject('address'), 'demo-hedgehog');
}, 300_000);
afterAll(() => browser.close());

async function atDoses(): Promise<Page> {
  const page = await browser.newPage({ viewport: DESK });
  await page.addInitScript(() => localStorage.setItem('bonewright.signer', 'R. Fenn'));
  await page.goto(`${inject('address')}/case/demo-hedgehog/theatre`);
  await page.getByRole('button', { name: 'Doses', exact: true }).click();
  await page.getByRole('heading', { name: 'Write a dose' }).waitFor();
  return page;
}

async function type(page: Page, words: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(words)) await page.getByLabel(label, { exact: true }).fill(text);
}

test('published figures are shown and none is chosen; the paper refuses while nothing is signed', async () => {
  const page = await atDoses();
  await page.getByRole('button', { name: 'Dose sheet' }).click();
  await page.getByText('Not printed: no dose is signed').waitFor();
  await type(page, { 'Drug, by its generic name': 'ketamine' });
  await page.getByText('European hedgehog, free-ranging').first().waitFor();
  expect(await page.getByLabel('Dose', { exact: true }).inputValue()).toBe('');
  expect(await violations(page)).toEqual([]);
  await page.close();
});

test('too small a volume is stopped, diluted it is signed, given and printed', async () => {
  const page = await atDoses();
  await type(page, { 'Drug, by its generic name': 'ketamine' });
  await page.getByRole('button', { name: 'Take 5 mg a kilogram, European hedgehog', exact: true }).first().click();
  await page.getByLabel('Strength, as the vial has it').fill('100');
  await page.getByLabel('Syringe').selectOption('1-ml');
  await page.getByText('is under 0.05 ml').first().waitFor();
  await page.getByRole('button', { name: /^Sign as/ }).click();
  await page.getByText(/^Not signed:/).waitFor();
  await type(page, { 'Diluted: one part in how many': '4', 'Diluted with': 'water for injection' });
  for (const field of await page.getByLabel(/^Why, all the same/).all()) await field.fill('weighed at noon, steady');
  await page.getByRole('button', { name: /^Sign as/ }).click();
  const card = page.getByRole('list', { name: 'Doses' });
  await card.getByText('Mix first: 0.1 ml of drug + 0.3 ml of water for injection').waitFor();
  await page.getByText('saved', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Dose sheet' }).click();
  await page.getByRole('link', { name: 'Open the paper' }).waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: /^Given now/ }).click();
  await card.getByText(/^given /).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  await page.close();
});

test('a range is chosen for the practice and signed; the register keeps its balance', async () => {
  const page = await browser.newPage({ viewport: DESK });
  await page.addInitScript(() => localStorage.setItem('bonewright.signer', 'R. Fenn'));
  await page.goto(`${inject('address')}/formulary`);
  await type(page, { 'Drug, by its generic name': 'buprenorphine', Species: 'hedgehog' });
  await page.getByLabel('Route').selectOption('SC');
  await page.getByRole('button', { name: 'Take 0.02-0.05 mg a kilogram, European hedgehog', exact: true }).click();
  await page.getByRole('button', { name: /^Sign as/ }).click();
  await page.getByRole('list', { name: 'Formulary' }).getByText('Signed by R. Fenn').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.goto(`${inject('address')}/register`);
  for (const [what, ml] of [
    ['received', '10'],
    ['given', '0.16'],
  ] as const) {
    await page.getByLabel('What', { exact: true }).selectOption(what);
    await page.getByLabel('Drug, by its generic name').fill('ketamine');
    await page.getByLabel('Strength, as the vial has it').fill('100');
    await page.getByLabel('Form: vial, ampoule').fill('vial');
    await page.getByLabel('Amount').fill(ml);
    await page.getByLabel('Witness', { exact: true }).fill('T. Okafor');
    await page.getByRole('button', { name: /^Enter as/ }).click();
  }
  await page.getByText('9.84 ml').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.close();
});
