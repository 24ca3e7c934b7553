import { getSunTimes } from 'sunrise-sunset-js';
import { expect, test } from 'vitest';
import { sunTimes } from './sun.ts';

const MS_PER_MINUTE = 60_000;
const MINUTES_PER_DEG = 4;
/** What a carer at the hedge would not notice. */
const WITHIN_MINUTES = 2;

const PLACES = [
  ['an English village', 52.2, -1.9, '2026-11-25'],
  ['London', 51.5, -0.12, '2026-06-21'],
  ['Edinburgh', 55.95, -3.19, '2026-12-21'],
  ['Reykjavik', 64.15, -21.94, '2026-03-20'],
  ['Sydney', -33.87, 151.21, '2026-01-15'],
  ['Auckland', -36.85, 174.76, '2026-09-23'],
  ['Quito', -0.18, -78.47, '2026-10-02'],
  ['Nuuk', 64.18, -51.7, '2026-03-01'],
  ['Ushuaia', -54.8, -68.3, '2026-06-21'],
  ['Tokyo', 35.68, 139.69, '2026-04-30'],
] as const;

/** Against the Solar Position Algorithm of the US National Renewable Energy Laboratory (Reda and Andreas 2004), in a library of its own. */
test.each(PLACES)(
  '%s: sunset and civil dusk are those of an independent library',
  (_, latitudeDeg, longitudeDeg, day) => {
    const ours = sunTimes({ latitudeDeg, longitudeDeg }, day);
    const noon = new Date(Date.parse(`${day}T12:00:00Z`) - longitudeDeg * MINUTES_PER_DEG * MS_PER_MINUTE);
    const timezone = Math.round(longitudeDeg / 15);
    const { sunset, twilight } = getSunTimes(latitudeDeg, longitudeDeg, noon, { timezone });
    expect(minutesApart(ours.sunset, sunset)).toBeLessThan(WITHIN_MINUTES);
    expect(minutesApart(ours.dusk, twilight?.civilDusk ?? null)).toBeLessThan(WITHIN_MINUTES);
  },
);

test('Tromsø: no sunset at midsummer, no sunrise at midwinter', () => {
  const tromso = { latitudeDeg: 69.65, longitudeDeg: 18.96 };
  expect(sunTimes(tromso, '2026-06-21')).toMatchObject({ sun: 'stays up', sunset: null, dusk: null });
  expect(sunTimes(tromso, '2026-12-21')).toMatchObject({ sun: 'stays down', sunset: null });
});

test('the Faroes at midsummer: the sun sets and civil dusk does not end', () => {
  const evening = sunTimes({ latitudeDeg: 62, longitudeDeg: -7 }, '2026-06-21');
  expect(evening).toMatchObject({ sun: 'sets', dusk: null });
});

test.each([
  [{ latitudeDeg: 91, longitudeDeg: 0 }, '2026-01-01', 'latitude'],
  [{ latitudeDeg: 0, longitudeDeg: 200 }, '2026-01-01', 'longitude'],
  [{ latitudeDeg: 0, longitudeDeg: 0 }, '1 May', 'no day'],
  [{ latitudeDeg: 0, longitudeDeg: 0 }, '2026-13-01', 'no day'],
])('%o on %s is refused', (place, day, says) => {
  expect(() => sunTimes(place, day)).toThrow(says);
});

function minutesApart(ours: string | null, theirs: Date | null): number {
  if (ours === null || theirs === null) return Number.POSITIVE_INFINITY;
  return Math.abs(Date.parse(ours) - theirs.getTime()) / MS_PER_MINUTE;
}
