import { entries } from '@bonewright/evidence';
import { expect, test } from 'vitest';
import { findNumbers, numberLines } from './numbers.ts';

test('every line has its own address and a source', () => {
  expect(new Set(numberLines.map(({ id }) => id)).size).toBe(numberLines.length);
  expect(numberLines.every(({ source }) => source.title !== '')).toBe(true);
});

test('whatever disagrees with a figure is on the page too', () => {
  const ids = new Set(numberLines.map(({ id }) => id));
  expect(numberLines.flatMap(({ conflicts }) => conflicts?.ids ?? []).filter((id) => !ids.has(id))).toEqual([]);
});

test('words are looked for in any order, without regard to capitals', () => {
  const found = findNumbers('YIELD steel').map(({ id }) => id);
  expect(found).toContain('steel.cold-worked.yield');
  expect(findNumbers('steel yield').map(({ id }) => id)).toEqual(found);
});

test('what nobody has looked up can be listed', () => {
  const recalled = findNumbers('from memory, nobody').filter(({ subject }) => subject === 'Figures');
  expect(recalled).toHaveLength(entries.filter(({ status }) => status === 'memory').length);
});

test('a word that stands nowhere finds nothing', () => {
  expect(findNumbers('xylophone')).toEqual([]);
});
