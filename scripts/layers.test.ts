import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { brokenLayers } from './layers.ts';

const root = join(import.meta.dirname, '..');
let copy: string;

beforeEach(() => {
  copy = mkdtempSync(join(tmpdir(), 'layers-'));
  cpSync(join(root, 'packages'), join(copy, 'packages'), {
    recursive: true,
    filter: (p) => !/node_modules|cases|kernel$/.test(p),
  });
});
afterEach(() => rmSync(copy, { recursive: true }));

test('the checkout keeps its arrows', () => {
  expect(brokenLayers(root)).toEqual([]);
});

test('a planted arrow back is caught', () => {
  const file = join(copy, 'packages/frame/package.json');
  const manifest = JSON.parse(readFileSync(file, 'utf8'));
  manifest.dependencies['@bonewright/construct'] = '0.1.0';
  writeFileSync(file, JSON.stringify(manifest));
  expect(brokenLayers(copy)).toContain('packages/frame may not import construct');
});

test('a planted random draw in a pure package is caught', () => {
  writeFileSync(join(copy, 'packages/bone/src/planted.ts'), 'export const n = Math.random();\n');
  expect(brokenLayers(copy)).toContain('packages/bone/src/planted.ts uses Math.random');
});
