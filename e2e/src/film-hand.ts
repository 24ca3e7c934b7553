/** A hand on a film plate: clicks where a film's own pixel stands, while the whole film is shown. */
import type { Locator, Page } from 'playwright-core';

export interface FilmClicks {
  readonly file: string;
  readonly view: 'craniocaudal' | 'mediolateral';
  readonly toTheRight: string;
  readonly cols: number;
  readonly rows: number;
  readonly ball: readonly [number, number];
  /** 1 and 2 along the proximal part, 3 and 4 along the distal part. */
  readonly four: readonly (readonly [number, number])[];
  readonly fracture: readonly (readonly [number, number])[];
  /** Proximal and distal end of the bone. */
  readonly ends: readonly (readonly [number, number])[];
}

export const plate = (page: Page, name: string | RegExp): Locator => page.getByRole('application', { name });

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where on the page a film's own pixel, [column, row], stands while its plate shows the whole film. */
export function onScreen(
  box: Box,
  film: FilmClicks,
  [column, row]: readonly [number, number],
): readonly [number, number] {
  const scale = Math.min(box.width / film.cols, box.height / film.rows);
  const x = box.x + box.width / 2 + (column - (film.cols - 1) / 2) * scale;
  return [x, box.y + box.height / 2 + (row - (film.rows - 1) / 2) * scale];
}

/** Clicks the film at one of its own pixels, [column, row]. */
export async function clickFilm(page: Page, film: FilmClicks, at: readonly [number, number]): Promise<void> {
  const box = await plate(page, new RegExp(film.view)).boundingBox();
  if (!box) throw new Error(`no ${film.view} film on the page`);
  await page.mouse.click(...onScreen(box, film, at));
}

export const SQUIRREL: readonly FilmClicks[] = [
  {
    file: 'a.dcm',
    view: 'craniocaudal',
    toTheRight: 'medial',
    cols: 620,
    rows: 900,
    ball: [123, 336],
    four: [
      [301, 342],
      [304, 455],
      [301, 479],
      [281, 604],
    ],
    fracture: [
      [287, 464],
      [319, 470],
    ],
    ends: [
      [298, 241],
      [278, 670],
    ],
  },
  {
    file: 'b.dcm',
    view: 'mediolateral',
    toTheRight: 'cranial',
    cols: 620,
    rows: 900,
    ball: [505, 556],
    four: [
      [322, 321],
      [314, 435],
      [320, 455],
      [330, 584],
    ],
    fracture: [
      [301, 443],
      [333, 447],
    ],
    ends: [
      [327, 221],
      [336, 653],
    ],
  },
];
