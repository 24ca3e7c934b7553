import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { columnsMm, longestRowMm, middlesMm, rasterPage } from './ink.ts';

const ROOT = join(import.meta.dirname, '../..');
const CASE = join(ROOT, 'packages/construct/cases/squirrel-tibia.json');
let folder: string;
const pdf = (size: string) => join(folder, `${size}.pdf`);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bonewright-paper-'));
  for (const size of ['A4', 'Letter']) {
    const args = ['--import', 'tsx', 'apps/cli/src/main.ts', 'sheet', CASE, '-o', pdf(size), '--size', size];
    execFileSync(process.execPath, args, { cwd: ROOT });
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// Half a printed millimetre is what a ruler tells; 0.2 mm is what the sheet promises.
test.each(['A4', 'Letter'])('%s: the check bar is 100.0 mm, within 0.2 mm, on the rastered page', (size) => {
  expect(Math.abs(longestRowMm(rasterPage(pdf(size)), 120) - 100)).toBeLessThanOrEqual(0.2);
});

test('the ruler beside the bone is as long as the bone, within 0.2 mm', () => {
  const { bone } = JSON.parse(readFileSync(CASE, 'utf8')) as { bone: { lengthMm: number } };
  const rulers = columnsMm(rasterPage(pdf('A4')), 20).filter((mm) => Math.abs(mm - bone.lengthMm) <= 0.2);
  expect(rulers.length).toBeGreaterThanOrEqual(2);
});

test.each(['A4', 'Letter'])('%s: the lines of the strip stand where the table says, within 0.2 mm', (size) => {
  const { bone } = JSON.parse(readFileSync(CASE, 'utf8')) as { bone: { lengthMm: number } };
  const last = Number(/Pages:\s+(\d+)/.exec(execFileSync('pdfinfo', [pdf(size)]).toString())?.[1]);
  const text = execFileSync('pdftotext', ['-f', String(last), '-layout', pdf(size), '-']).toString();
  const rows = [...text.matchAll(/^\s*P\d+\s+\S+ \S+\s+([\d.]+)\s+([\d.]+)/gm)];
  expect(rows.length).toBeGreaterThanOrEqual(4);
  const printed = rows.flatMap(([, proximal, distal]) => [Number(proximal), Number(distal)]);
  const page = rasterPage(pdf(size), last);
  const isLine = (at: readonly number[]) =>
    at.length === rows.length + 2 && Math.abs(at.at(-1)! - at[0]! - bone.lengthMm) <= 0.2;
  const isTrue = (at: readonly number[]) =>
    at
      .slice(1, -1)
      .flatMap((x) => [x - at[0]!, at.at(-1)! - x])
      .every((mm, i) => Math.abs(mm - printed[i]!) <= 0.2);
  const crossed = Array.from({ length: page.height }, (_, row) => middlesMm(page, row)).filter(isLine);
  // At least 2 mm of the strip's height is crossed by its lines alone; a row of letters may pass for lines here and there.
  expect(crossed.filter(isTrue).length * page.mmPerPixel).toBeGreaterThan(2);
  expect(crossed.filter(isTrue).length).toBeGreaterThan(crossed.length * 0.8);
});

test('a plan of six pins is one page of drawings and one to cut', () => {
  expect(execFileSync('pdfinfo', [pdf('A4')]).toString()).toMatch(/Pages:\s+2\b/);
});

test('the sheet is tagged, its fonts embedded, and every character it prints comes back as text', () => {
  expect(execFileSync('pdfinfo', [pdf('A4')]).toString()).toMatch(/Tagged:\s+yes/);
  const fonts = execFileSync('pdffonts', [pdf('A4')])
    .toString()
    .trim()
    .split('\n')
    .slice(2);
  expect(fonts.length).toBeGreaterThanOrEqual(3);
  for (const font of fonts) expect(font).toMatch(/ yes yes yes /);
  const text = execFileSync('pdftotext', ['-layout', pdf('A4'), '-']).toString();
  for (const words of ['Theatre sheet', 'drawn 1:1', 'Pins, proximal end first', 'Margins, worst first', '100 mm']) {
    expect(text).toContain(words);
  }
  expect(text).not.toMatch(/[\uFFFD\u25A1]/);
});
