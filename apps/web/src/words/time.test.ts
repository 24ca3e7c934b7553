import { expect, test } from 'vitest';
import { comingNights, dayOf, dueStanding, fromField, moment, shortMoment, toField } from './time.ts';

const now = new Date(2026, 10, 25, 0, 30);

test('an hour ago may be yesterday, and is then said with its day', () => {
  expect(moment(new Date(2026, 10, 25, 0, 10).toISOString(), now)).toBe('00:10 today');
  expect(moment(new Date(2026, 10, 24, 23, 30).toISOString(), now)).toBe('Tue 24 Nov 23:30');
  expect(shortMoment(new Date(2026, 10, 24, 23, 30).toISOString(), now)).toBe('Tue 24 Nov 23:30');
});

test('days are counted by nights, also over the change of the clocks', () => {
  expect(dayOf(new Date(2026, 10, 24, 23, 59).toISOString(), now)).toBe(2);
  expect(dayOf(new Date(2026, 9, 20, 12).toISOString(), now)).toBe(37);
  expect(dayOf(now.toISOString(), now)).toBe(1);
});

test('a time goes into a field and comes back to the minute', () => {
  expect(fromField(toField(now))).toBe(now.toISOString());
  expect(fromField('soon')).toBeNull();
});

test('nights to come are days of the calendar, over the end of a month', () => {
  expect(comingNights(3, new Date(2026, 10, 29, 23, 50))).toEqual(['2026-11-29', '2026-11-30', '2026-12-01']);
});

test('what was due yesterday is overdue just after midnight', () => {
  expect(dueStanding('2026-11-24', now)).toBe('overdue');
  expect(dueStanding('2026-11-25', now)).toBe('today');
  expect(dueStanding('2026-12-01', now)).toBe('ahead');
});
