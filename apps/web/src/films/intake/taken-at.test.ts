import { expect, test } from 'vitest';
import { takenAt } from './taken-at.ts';

const local = (text: string): string => new Date(text).toISOString();

test('acquisition comes before study, fractions of a second do not matter', () => {
  const header = {
    studyDate: '20261124',
    studyTime: '2200',
    acquisitionDate: '20261124',
    acquisitionTime: '225801.25',
  };
  expect(takenAt(header)).toBe(local('2026-11-24T22:58:01'));
});

test('a date and time in one is split', () => {
  expect(takenAt({ acquisitionDateTime: '20261124225801' })).toBe(local('2026-11-24T22:58:01'));
});

test('a date without a time is not a time, nor is junk', () => {
  expect(takenAt({ studyDate: '20261124' })).toBeNull();
  expect(takenAt({ studyDate: '20269924', studyTime: '2200' })).toBeNull();
  expect(takenAt({})).toBeNull();
});
