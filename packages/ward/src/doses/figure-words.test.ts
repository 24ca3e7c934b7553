import { expect, test } from 'vitest';
import { plain, spelled } from './figure-words.ts';

test.each([
  [0.075, '0.075'],
  [0.0075, '0.0075'],
  [3.75, '3.75'],
  [1234.5678, '1235'],
  [1e-7, '0.0000001'],
  [0.1 + 0.2, '0.3'],
  [0, '0'],
])('%s is written %s', (value, written) => {
  expect(plain(value)).toBe(written);
});

test.each([
  ['0.075', 'nought point nought seven five'],
  ['12', 'twelve'],
  ['21.5', 'twenty-one point five'],
  ['105', 'one hundred and five'],
  ['1040', 'one thousand and forty'],
  ['2300', 'two thousand three hundred'],
])('%s is spelled %s', (figure, words) => {
  expect(spelled(figure)).toBe(words);
});
