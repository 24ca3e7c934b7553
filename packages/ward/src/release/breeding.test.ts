import { expect, test } from 'vitest';
import { breedingIn } from './breeding.ts';

test('a sow admitted in July may have young that wait for her; in January none', () => {
  expect(breedingIn('Hedgehog', 7)?.says).toMatch(/milk/);
  expect(breedingIn('hedgehog', 1)).toBeNull();
  expect(breedingIn('no such animal', 7)).toBeNull();
});
