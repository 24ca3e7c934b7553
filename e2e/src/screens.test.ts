/** Every screen at desk and phone size: nothing wider than the screen, nothing axe finds, no fault thrown. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch, PHONE, TABLET } from './browser.ts';
import { freshDemonstration } from './demonstration.ts';

/** 720 x 450 is what a desk's screen holds at 200 %. */
const SIZES = {
  desk: { viewport: DESK, theme: 'paper' },
  phone: { viewport: PHONE, theme: 'paper' },
  'tablet in the dim theme': { viewport: TABLET, theme: 'dim' },
  'desk at 200 % in the dim theme': { viewport: { width: DESK.width / 2, height: DESK.height / 2 }, theme: 'dim' },
};
const SCREENS = {
  board: '/',
  'start a case': '/new',
  formulary: '/formulary',
  register: '/register',
  stock: '/stock',
  numbers: '/numbers#steel.cold-worked.yield',
  admission: '/case/demo-squirrel/admission',
  films: '/case/demo-squirrel/films',
  'later films': '/case/demo-rabbit/films?later',
  plan: '/case/demo-squirrel/plan',
  theatre: '/case/demo-squirrel/theatre',
  recovery: '/case/demo-hedgehog/recovery',
  rechecks: '/case/demo-rabbit/rechecks',
  release: '/case/demo-rabbit/release',
};
/** The words by which a screen is known to be there. */
const SIGNS: Partial<Record<keyof typeof SCREENS, string>> = { films: 'What the films say', plan: 'Full figures' };

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
  await freshDemonstration(inject('address'), 'demo-squirrel');
}, 300_000);
afterAll(() => browser.close());

for (const [size, { viewport, theme }] of Object.entries(SIZES)) {
  for (const [name, path] of Object.entries(SCREENS)) {
    test(`${name}, ${size}: fits, is accessible, throws nothing`, async () => {
      const page = await browser.newPage({ viewport });
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      await page.goto(inject('address') + path);
      await page.getByRole('main').waitFor();
      await page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme);
      const sign = SIGNS[name as keyof typeof SCREENS];
      if (sign) await page.getByText(sign).first().waitFor({ timeout: 60_000 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
      expect(await violations(page)).toEqual([]);
      expect(faults).toEqual([]);
      await page.close();
    });
  }
}
