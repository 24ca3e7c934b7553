/** Sunset, civil dusk and sunrise at a place on a day. Positions by a general astronomy library; refraction at the horizon as usual there. */
import { InputError } from '@bonewright/fault';
import { AstroTime, Body, Equator, Horizon, Observer, SearchAltitude, SearchRiseSet } from 'astronomy-engine';

export interface Place {
  /** North is positive. */
  readonly latitudeDeg: number;
  /** East is positive. */
  readonly longitudeDeg: number;
}

/** A day of the calendar, `2026-11-25`, as the place's own sun has it. */
export type Day = string;

export interface SunTimes {
  /** Whether the sun sets on that day at all. */
  readonly sun: 'sets' | 'stays up' | 'stays down';
  /** UTC; null where it does not set. */
  readonly sunset: string | null;
  /** End of civil dusk, UTC: the sun 6 degrees below. Null where it does not get so low, or was never up. */
  readonly dusk: string | null;
  /** Of the next morning, UTC; null where there is none within a day. */
  readonly nextSunrise: string | null;
}

const CIVIL_DEG = -6;
const DEG_PER_DAY = 360;
const RISES = 1;
const SETS = -1;
const WITHIN_DAYS = 1;

/** Sun times of the evening of `day` at `place`. Throws InputError for a place or day that does not exist. */
export function sunTimes(place: Place, day: Day): SunTimes {
  const observer = observerAt(place);
  const noon = noonOf(day, place.longitudeDeg);
  const midnight = noon.AddDays(WITHIN_DAYS / 2);
  const sunset = before(SearchRiseSet(Body.Sun, observer, SETS, noon, WITHIN_DAYS), noon.ut + WITHIN_DAYS);
  const dusk = before(SearchAltitude(Body.Sun, observer, SETS, noon, WITHIN_DAYS, CIVIL_DEG), noon.ut + WITHIN_DAYS);
  const nextSunrise = SearchRiseSet(Body.Sun, observer, RISES, midnight, WITHIN_DAYS);
  const sun = sunset ? 'sets' : altitudeDeg(observer, noon) > 0 ? 'stays up' : 'stays down';
  return { sun, sunset: iso(sunset), dusk: iso(dusk), nextSunrise: iso(nextSunrise) };
}

function observerAt({ latitudeDeg, longitudeDeg }: Place): Observer {
  if (!(Math.abs(latitudeDeg) <= 90))
    throw new InputError(`${latitudeDeg} is no latitude`, 'latitudeDeg', 'from -90 to 90');
  if (!(Math.abs(longitudeDeg) <= 180))
    throw new InputError(`${longitudeDeg} is no longitude`, 'longitudeDeg', 'from -180 to 180');
  return new Observer(latitudeDeg, longitudeDeg, 0);
}

/** When the mean sun stands highest over that longitude. */
function noonOf(day: Day, longitudeDeg: number): AstroTime {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const days = daysSinceNoonOf2000(Number(year), Number(month), Number(date));
  if (!Number.isFinite(days) || Number(month) > 12 || Number(date) > 31)
    throw new InputError(`"${day}" is no day`, 'day', 'write it like 2026-11-25');
  return new AstroTime(days - longitudeDeg / DEG_PER_DAY);
}

/** Days from noon of 1 January 2000 to noon of that day (Fliegel and Van Flandern 1968, less Julian day 2451545). */
function daysSinceNoonOf2000(year: number, month: number, day: number): number {
  const a = Math.trunc((month - 14) / 12);
  return (
    Math.trunc((1461 * (year + 4800 + a)) / 4) +
    Math.trunc((367 * (month - 2 - 12 * a)) / 12) -
    Math.trunc((3 * Math.trunc((year + 4900 + a) / 100)) / 4) +
    day -
    32075 -
    2451545
  );
}

const before = (time: AstroTime | null, lastUt: number): AstroTime | null => (time && time.ut < lastUt ? time : null);

const iso = (time: AstroTime | null): string | null => time?.date.toISOString() ?? null;

function altitudeDeg(observer: Observer, time: AstroTime): number {
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  return Horizon(time, observer, ra, dec, 'normal').altitude;
}
