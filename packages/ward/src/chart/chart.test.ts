import { expect, test } from 'vitest';
import { coldBelow, LANES, laneSpan, sittings, timeAxis, trendPerHour, usualOf, usualWords } from '../index.ts';

const at = (hour: string) => ({ at: `2026-11-25T${hour}:00Z` });

test('a pause of over an hour and a half begins another chart; order of writing does not matter', () => {
  const groups = sittings([at('14:00'), at('09:00'), at('10:30'), at('12:01')]);
  expect(groups.map((group) => group.map((one) => one.at.slice(11, 16)))).toEqual([
    ['09:00', '10:30'],
    ['12:01'],
    ['14:00'],
  ]);
});

test('the axis spans at least half an hour and its ticks lie on whole multiples', () => {
  const short = timeAxis('2026-11-25T21:02:00Z', '2026-11-25T21:04:00Z');
  expect(short.to - short.from).toBe(30);
  expect(short.ticks.map((tick) => tick % 60)).toEqual([5, 10, 15, 20, 25, 30]);
  const long = timeAxis('2026-11-25T10:00:00Z', '2026-11-25T13:00:00Z');
  expect(long.ticks.length).toBeLessThanOrEqual(9);
});

test('usual ranges are of the own species only, and weak ones say so', () => {
  expect(usualOf('rabbit', 'heartPerMin').map(usualWords)).toEqual(['130 to 325 /min']);
  expect(usualOf('rabbit', 'temperatureC').map(usualWords)).toEqual(['38.5 to 40 °C', '37.4 to 39.6 °C']);
  expect(usualOf('hedgehog', 'heartPerMin').map(({ isWeak }) => isWeak)).toEqual([true]);
  expect(usualOf('tawny owl', 'temperatureC').map(({ isWeak }) => isWeak)).toEqual([true]);
  expect(usualOf('red squirrel', 'heartPerMin')).toEqual([]);
  expect(
    LANES.every(({ key }) => usualOf('rabbit', key).every(({ entry }) => entry.appliesTo.includes('rabbit'))),
  ).toBe(true);
});

test('an axis holds every reading and every usual figure', () => {
  const [low, high] = laneSpan([110, 240], usualOf('rabbit', 'heartPerMin'), 5);
  expect(low).toBeLessThan(110);
  expect(high).toBeGreaterThan(325);
});

test('cold: the lowest usual figure of the kind, a hedgehog is not judged as a rabbit', () => {
  expect(coldBelow('rabbit').belowC).toBe(37.4);
  expect(coldBelow('hedgehog').belowC).toBe(35);
  expect(coldBelow('buzzard').belowC).toBe(40);
  expect(coldBelow('red squirrel')).toMatchObject({ belowC: 36.6, isWeak: true });
});

test('two degrees lost in half an hour are four an hour', () => {
  const lost = [
    { minutes: 0, temperatureC: 38 },
    { minutes: 30, temperatureC: 36 },
  ];
  expect(trendPerHour(lost)).toBeCloseTo(-4, 12);
  expect(trendPerHour(lost.slice(0, 1))).toBeNull();
});
