/** The films' part of the job, once with the mouse and once with the keys alone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { clickFilm, type FilmClicks, onScreen, plate, SQUIRREL } from './film-hand.ts';

export const FILMS = join(import.meta.dirname, '../films');

export async function startCase(page: Page): Promise<void> {
  await page.goto(`${inject('address')}/new`);
  await page.getByLabel('Species').fill('red squirrel');
  await page.getByLabel(/^Mass/).fill('310');
  await page.getByLabel('Broken bone').fill('tibia');
  await page.getByRole('radio', { name: 'left' }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Start the case' }).press('Enter');
  await page.getByText('No films yet').waitFor();
}

export async function drop(page: Page): Promise<void> {
  const data = SQUIRREL.map(({ file }) => ({ file, base64: readFileSync(join(FILMS, file)).toString('base64') }));
  const transfer = await page.evaluateHandle((list) => {
    const dropped = new DataTransfer();
    for (const { file, base64 } of list)
      dropped.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], file));
    return dropped;
  }, data);
  await page.locator('main label').last().dispatchEvent('drop', { dataTransfer: transfer });
  await page.getByRole('heading', { name: 'b.dcm' }).first().waitFor();
}

export function stepsOf(page: Page, film: FilmClicks): Locator {
  const word = new RegExp(`${film.file}|${film.view}`, 'i');
  return page.locator('details.steps-frame').filter({ has: page.getByRole('heading', { name: word }) });
}

/** Every mark of a film, placed with the crosshair; what is wanted next is asked for by the plate. */
export async function markByKeys(page: Page, film: FilmClicks): Promise<void> {
  const steps = stepsOf(page, film);
  for (const name of [film.view, film.toTheRight]) {
    await steps.getByRole('radio', { name, exact: true }).focus();
    await page.keyboard.press('Space');
  }
  const ball = steps.getByLabel(/Ball across/);
  if ((await ball.inputValue()) === '') {
    await ball.focus();
    await page.keyboard.type('5');
    await page.keyboard.press('Enter');
  }
  await steps.getByRole('button', { name: 'proximal', exact: true }).press('Enter');
  const mine = plate(page, new RegExp(film.view));
  await expect.poll(() => mine.evaluate((it) => it === document.activeElement)).toBe(true);
  const box = await boxOf(mine);
  let at: readonly [number, number] = [box.width / 2, box.height / 2];
  for (const place of [...film.ends, film.ball, ...film.four, ...film.fracture]) {
    const to = onScreen(box, film, place);
    const wanted = [to[0] - box.x, to[1] - box.y] as const;
    at = [
      await stepTo(page, at[0], wanted[0], 'ArrowLeft', 'ArrowRight'),
      await stepTo(page, at[1], wanted[1], 'ArrowUp', 'ArrowDown'),
    ];
    await page.keyboard.press('Enter');
  }
  await page
    .getByRole('region', { name: new RegExp(film.view, 'i') })
    .getByText(/10 mm/)
    .waitFor();
}

const FAR_PX = 8;

/** Large steps, then steps of one pixel. Resolves to where the crosshair is. */
async function stepTo(page: Page, from: number, to: number, less: string, more: string): Promise<number> {
  const way = Math.round(to - from);
  const key = way < 0 ? less : more;
  for (let i = 0; i < Math.floor(Math.abs(way) / FAR_PX); i++) await page.keyboard.press(key);
  for (let i = 0; i < Math.abs(way) % FAR_PX; i++) await page.keyboard.press(`Shift+${key}`);
  return from + way;
}

export async function boxOf(what: Locator) {
  const box = await what.boundingBox();
  if (!box) throw new Error('it is not on the page');
  return box;
}

/** Every mark of a film, clicked in the order that the plate asks for. */
export async function markByMouse(page: Page, film: FilmClicks): Promise<void> {
  const mine = stepsOf(page, film);
  await mine.getByRole('radio', { name: film.view, exact: true }).check({ force: true });
  await mine.getByRole('radio', { name: film.toTheRight, exact: true }).check({ force: true });
  const ball = mine.getByLabel(/Ball across/);
  if ((await ball.inputValue()) === '') await ball.fill('5');
  await mine.getByRole('button', { name: 'proximal', exact: true }).click();
  for (const at of [...film.ends, film.ball, ...film.four, ...film.fracture]) await clickFilm(page, film, at);
  await page
    .getByRole('region', { name: new RegExp(film.view, 'i') })
    .getByText(/10 mm/)
    .waitFor();
}
