import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { columnsMm, longestRowMm, rasterPage } from './ink.ts';

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
