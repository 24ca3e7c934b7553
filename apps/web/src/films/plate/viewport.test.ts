import { expect, test } from 'vitest';
import { STRAIGHT } from './turn.ts';
import { filmPlace, panned, screenPlace, wholeFilm, zoomed } from './viewport.ts';

const plate = { width: 440, height: 690 };
const whole = wholeFilm({ cols: 640, rows: 960 }, plate, STRAIGHT);

test('the whole film fits: its corners, half a pixel out, touch or stay inside the plate', () => {
  const [left, top] = screenPlace(whole, plate, [-0.5, -0.5]);
  const [right, bottom] = screenPlace(whole, plate, [639.5, 959.5]);
  expect(left).toBeCloseTo(0, 9);
  expect(right).toBeCloseTo(440, 9);
  expect(top).toBeGreaterThanOrEqual(0);
  expect(bottom).toBeLessThanOrEqual(690);
});

test('a place goes to the screen and comes back', () => {
  const view = zoomed(whole, whole, plate, [100, 200], 3.7);
  const [col, row] = filmPlace(view, plate, screenPlace(view, plate, [123.4, 567.8]));
  expect(col).toBeCloseTo(123.4, 9);
  expect(row).toBeCloseTo(567.8, 9);
});

test('what lies under the pointer stays there while zooming and follows the hand while panning', () => {
  const at = [77, 301] as const;
  const before = filmPlace(whole, plate, at);
  const near = zoomed(whole, whole, plate, at, 5);
  expect(filmPlace(near, plate, at)[0]).toBeCloseTo(before[0], 9);
  const [x, y] = screenPlace(panned(near, 10, -20), plate, before);
  expect(x).toBeCloseTo(87, 9);
  expect(y).toBeCloseTo(281, 9);
});

test('turned and flipped, a place still comes back, and the hand still carries the film along', () => {
  const turned = wholeFilm({ cols: 640, rows: 960 }, plate, { isFlipped: true, quarters: 1 });
  expect(turned.scale).toBeCloseTo(440 / 960, 9);
  const before = filmPlace(turned, plate, [50, 60]);
  const [x, y] = screenPlace(panned(turned, 10, -20), plate, before);
  expect(x).toBeCloseTo(60, 9);
  expect(y).toBeCloseTo(40, 9);
});

test('zooming stops at forty screen pixels for one of the film', () => {
  expect(zoomed(whole, whole, plate, [0, 0], 1e6).scale).toBe(40);
});
