import { directionWords } from '@bonewright/construct';
import { expect, test } from 'vitest';
import { figure, threeFigures, tiltWords } from './words.ts';

test('a figure keeps its decimals, groups its thousands and has a true minus sign', () => {
  expect(figure(1848, 0)).toBe('1\u2009848');
  expect(figure(-12345.678, 2)).toBe('−12\u2009345.68');
  expect(figure(-0.04, 1)).toBe('0.0');
});

test('three figures that count', () => {
  expect([537.4, 12.34, 0.0342, 0].map(threeFigures)).toEqual(['537', '12.3', '0.0342', '0']);
});

test('directions by the nearer side', () => {
  expect([0, 90, -90, 180, -180].map(directionWords)).toEqual(['medial', 'cranial', 'caudal', 'lateral', 'lateral']);
  expect(directionWords(20)).toBe('20° cranial of medial');
  expect(directionWords(-150)).toBe('30° caudal of lateral');
  expect(directionWords(380)).toBe('20° cranial of medial');
  expect(tiltWords(-10)).toBe('outer end 10° proximal');
});
