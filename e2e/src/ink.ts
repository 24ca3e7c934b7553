/** Measures printed pages: the ink of a page as dark or light, by Debian's pdftoppm. */
import { execFileSync } from 'node:child_process';

export interface Page {
  readonly width: number;
  readonly height: number;
  /** Whether the pixel at [column, row] is dark. */
  readonly isDark: (column: number, row: number) => boolean;
  readonly mmPerPixel: number;
}

const DPI = 600;

/** Rasters one page of a PDF at 600 dots an inch. */
export function rasterPage(pdf: string, page = 1): Page {
  const args = ['-gray', '-r', String(DPI), '-f', String(page), '-l', String(page), pdf];
  const pgm = execFileSync('pdftoppm', args, { maxBuffer: 200 * 1024 * 1024 });
  const [, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1')) ?? [];
  const [w, h] = [Number(width), Number(height)];
  const start = pgm.length - w * h;
  return { width: w, height: h, mmPerPixel: 25.4 / DPI, isDark: (c, r) => (pgm[start + r * w + c] ?? 255) < 128 };
}

/** The longest unbroken dark stretch along any row, in mm, not counting stretches longer than `mostMm`. */
export function longestRowMm(page: Page, mostMm: number): number {
  let longest = 0;
  for (let row = 0; row < page.height; row += 1) {
    for (const run of runs(page.width, (c) => page.isDark(c, row))) {
      if (run * page.mmPerPixel <= mostMm) longest = Math.max(longest, run);
    }
  }
  return longest * page.mmPerPixel;
}

/** The unbroken dark stretches along any column of at least `leastMm`, in mm, longest first. */
export function columnsMm(page: Page, leastMm: number): number[] {
  const found: number[] = [];
  for (let column = 0; column < page.width; column += 1) {
    for (const run of runs(page.height, (r) => page.isDark(column, r))) {
      if (run * page.mmPerPixel >= leastMm) found.push(run * page.mmPerPixel);
    }
  }
  return found.sort((a, b) => b - a);
}

/** Where the middles of the dark stretches of that row stand, in mm from the page's left edge. */
export function middlesMm(page: Page, row: number): number[] {
  const middles: number[] = [];
  for (let column = 0, began = -1; column <= page.width; column += 1) {
    const isDark = column < page.width && page.isDark(column, row);
    if (isDark && began < 0) began = column;
    if (isDark || began < 0) continue;
    middles.push(((began + column) / 2) * page.mmPerPixel);
    began = -1;
  }
  return middles;
}

function* runs(length: number, isDark: (i: number) => boolean): Generator<number> {
  let run = 0;
  for (let i = 0; i <= length; i += 1) {
    if (i < length && isDark(i)) run += 1;
    else if (run > 0) {
      yield run;
      run = 0;
    }
  }
}
