/** In theatre a pin goes in 2 mm off: the margins, the advice for the next pin and the record follow, and a reload loses nothing. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch, TABLET } from './browser.ts';
import { freshDemonstration } from './demonstration.ts';

const CASE = 'demo-squirrel';

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
  await freshDemonstration(inject('address'), CASE);
}, 300_000);
afterAll(() => browser.close());

test('a pin 2 mm off changes margins and the advice for the next pin; taken back, the plan stands again', async () => {
  const page = await browser.newPage({ viewport: TABLET });
  await page.goto(`${inject('address')}/case/${CASE}/theatre`);
  const asWanted = await settled(page);
  expect(asWanted.title).toBe('Pin 1 of 6');

  const more = page.getByRole('button', { name: /Distance of P1.*more/ });
  for (let half = 0; half < 4; half += 1) await more.click();
  const off = await settled(page);
  expect(off.others).toContain('2.0 mm distal of where it was wanted');
  expect(off.margins).not.toEqual(asWanted.margins);
  expect(off.others).not.toBe(asWanted.others);
  expect(distanceToP1(off.others)).toBeCloseTo(distanceToP1(asWanted.others) - 2, 1);

  await page.reload();
  expect((await settled(page)).others).toBe(off.others);

  await page.getByRole('button', { name: /P1 is in at/ }).click();
  await page.getByRole('heading', { name: 'Pin 2 of 6' }).waitFor();
  const next = await settled(page);
  expect(next.second).toMatch(/from P1$/);

  await page.getByRole('button', { name: /^P1/ }).first().click();
  await page.getByRole('button', { name: 'Take the entry back' }).click();
  await page.getByRole('button', { name: 'typed for the wrong pin' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Take the entry back' }).click();
  await page.getByRole('heading', { name: 'Pin 1 of 6' }).waitFor();
  expect((await settled(page)).margins).toEqual(asWanted.margins);
  await page.close();
});

const distanceToP1 = (others: string): number => Number(/([\d.]+) mm from P1/.exec(others)?.[1]);

/** What the screen says once nothing is being worked out any more: the same at two looks. */
async function settled(page: Page) {
  let last = await said(page);
  for (let looks = 0; looks < 20; looks += 1) {
    await page.waitForTimeout(1500);
    const now = await said(page);
    if (JSON.stringify(now) === JSON.stringify(last)) return now;
    last = now;
  }
  throw new Error('the figures never came to rest');
}

async function said(page: Page) {
  await page
    .locator('.theatre-after')
    .getByText(/stay|move/)
    .first()
    .waitFor({ timeout: 90_000 });
  await page.getByText('figures still moving').waitFor({ state: 'detached', timeout: 90_000 });
  return {
    title: await page.getByRole('heading', { level: 2 }).textContent(),
    margins: [
      await page.locator('.theatre-figure[role=status]').textContent(),
      await page.getByRole('list', { name: 'The other margins' }).textContent(),
    ],
    others: (await page.locator('.theatre-after').textContent()) ?? '',
    second: await page.locator('.theatre-second').textContent(),
  };
}

test('on the tablet all that the next pin needs is seen without scrolling, the margin that follows beside it', async () => {
  const page = await browser.newPage({ viewport: TABLET });
  await page.goto(`${inject('address')}/case/${CASE}/theatre`);
  await settled(page);
  const buttons = await page.locator('.theatre-actions').boundingBox();
  const needed = [
    page.getByRole('heading', { level: 2 }),
    page.locator('.theatre-second'),
    page.locator('.theatre-orders'),
    page.getByText(/^Pilot hole [\d.]+ mm/).first(),
    page.locator('.theatre-care'),
    page.getByRole('textbox', { name: /^Distance of P1/ }),
    page.locator('.theatre-after li:nth-child(2)'),
    page.locator('.theatre-figure[role=status]'),
    page.locator('.theatre-column .margin-axis'),
    page.getByText(/; weakest: /),
  ];
  for (const what of needed) {
    const box = await what.boundingBox();
    expect(box!.y + box!.height, `${what}`).toBeLessThanOrEqual(buttons!.y);
  }
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
  await page.close();
});
