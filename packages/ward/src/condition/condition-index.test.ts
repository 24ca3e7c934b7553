import { expect, test } from 'vitest';
import { conditionIndex } from './condition-index.ts';

test('the index is middle over head to tail (Bunnell), judged by the published least and by the rescue that begins lower', () => {
  expect(conditionIndex({ middleMm: 336, headToTailMm: 400, hasFrame: false })).toMatchObject({ index: 0.84 });
  expect(conditionIndex({ middleMm: 318, headToTailMm: 400, hasFrame: false }).because).toMatch(/^Between 0.79/);
  expect(conditionIndex({ middleMm: 280, headToTailMm: 400, hasFrame: false }).because).toMatch(/^Under/);
});

test('with a frame on there is no index, whatever was measured', () => {
  expect(conditionIndex({ middleMm: 336, headToTailMm: 400, hasFrame: true }).index).toBeNull();
});

test('a girth of nothing is refused', () => {
  expect(() => conditionIndex({ middleMm: 0, headToTailMm: 400, hasFrame: false })).toThrow('girth');
});
