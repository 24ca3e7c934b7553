import { expect, test } from 'vitest';
import { gramsOfFeed, neededKcalPerDay, restingKcalPerDay } from './energy.ts';

/** Hand-rearing Birds, 2nd edition, appendix B, table B.1 (basal and 1.5 times it, rounded to 0.1 there). */
test.each([
  [10, 4.1, 6.1],
  [20, 6.9, 10.3],
  [50, 13.6, 20.5],
  [60, 15.6, 23.5],
  [90, 21.2, 31.8],
  [100, 22.9, 34.4],
])('songbird of %i g: %f basal and %f kcal a day', (massG, basal, active) => {
  // The table rounds to one place.
  expect(Math.abs(restingKcalPerDay('passerine', massG) - basal)).toBeLessThan(0.06);
  expect(Math.abs(neededKcalPerDay('passerine', massG, [1.5]) - active)).toBeLessThan(0.06);
});

/** Computed by hand from 70 times kg to the power 0.75. */
test.each([
  [100, 12.4],
  [300, 28.4],
  [750, 56.4],
  [1000, 70],
  [2500, 139.2],
  [5000, 234.1],
])('mammal of %i g rests on %f kcal a day', (massG, kcal) => {
  expect(restingKcalPerDay('mammal', massG)).toBeCloseTo(kcal, 1);
});

test('buzzard of 0.8 kg, no songbird: 66.0 kcal a day', () => {
  expect(restingKcalPerDay('non-passerine', 800)).toBeCloseTo(66, 1);
});

test('grams of feed give back the energy; a feed without energy is refused', () => {
  const grams = gramsOfFeed(56.4, 120);
  expect((grams * 120) / 100).toBeCloseTo(56.4, 9);
  expect(() => gramsOfFeed(50, 0)).toThrow('packet');
  expect(() => restingKcalPerDay('mammal', 0)).toThrow('weigh');
});
