import { expect, test } from 'vitest';
import { keyed, START, type View } from './view-keys.ts';

const after = (keys: readonly string[]): View => keys.reduce((view, key) => keyed(view, key) ?? view, START);

test('opposite keys bring the view back, and Home does after any of them', () => {
  expect(after(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'])).toEqual(START);
  expect(after(['+', '-']).zoom).toBeCloseTo(1, 12);
  expect(after(['ArrowLeft', 'ArrowLeft', 'ArrowDown', '+', 'Home'])).toEqual(START);
  expect(after(['f', 's'])).toEqual({ ...START, isFaded: true, hasSkin: true });
});

test('the drawing never turns over its top and never vanishes by zooming', () => {
  expect(after(Array.from({ length: 40 }, () => 'ArrowDown')).eye.leanDeg).toBeLessThan(90);
  expect(after(Array.from({ length: 200 }, () => '-')).zoom).toBeGreaterThan(0.1);
  expect(keyed(START, 'q')).toBeNull();
});
