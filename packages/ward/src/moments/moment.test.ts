import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayAt, hoursBetween, minutesAt } from './moment.ts';

test('the same minutes as the platform’s own clock counts, from 1900 to 2200', () => {
  const dates = fc.date({ min: new Date('1900-01-01'), max: new Date('2200-01-01'), noInvalidDate: true });
  fc.assert(
    fc.property(dates, (date) => {
      expect(minutesAt(date.toISOString())).toBeCloseTo(date.getTime() / 60_000, 4);
    }),
  );
});

test('hours run across midnight, days turn at the place’s own midnight', () => {
  expect(hoursBetween('2026-11-25T23:10:00Z', '2026-11-26T00:40:00Z')).toBe(1.5);
  expect(dayAt('2026-11-25T23:30:00Z', 60) - dayAt('2026-11-25T22:30:00Z', 60)).toBe(1);
  expect(dayAt('2026-11-25T23:30:00Z', 0)).toBe(dayAt('2026-11-25T00:00:00Z', 0));
});

test.each(['', 'today', '2026-11-25', '2026-11-25T23:10:00+01:00'])('refused: "%s"', (moment) => {
  expect(() => minutesAt(moment)).toThrow(InputError);
});
