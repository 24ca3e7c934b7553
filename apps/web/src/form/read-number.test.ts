import { expect, test } from 'vitest';
import { numberFault, readNumber } from './read-number.ts';

test('a comma counts as a point', () => {
  expect(readNumber(' 4,5 ')).toBe(4.5);
});

test.each(['', '4 5', '4.5.1', 'five', '1e3', 'NaN', '-', '.'])('"%s" is no number', (text) => {
  expect(readNumber(text)).toBeNull();
});

test('wrong text is quoted back, and an empty field says nothing', () => {
  expect(numberFault('five')).toContain('"five"');
  expect(numberFault('')).toBeNull();
});

test('zero is enough only where the field says so', () => {
  expect(numberFault('0')).toContain('more than 0');
  expect(numberFault('0', { from0: true })).toBeNull();
});
