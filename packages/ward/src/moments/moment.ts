/** Moments as records write them (`2026-11-25T23:10:00Z`), counted without a clock: a pure package is given the time. */
import { InputError } from '@bonewright/fault';

const SHAPE = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?Z$/;
const MINUTES_A_DAY = 1440;

/** Minutes since the start of 1970, UTC. Throws InputError for anything but a moment in UTC. */
export function minutesAt(moment: string): number {
  const found = SHAPE.exec(moment);
  if (!found) throw new InputError(`"${moment}" is not a moment`, '', 'write it like 2026-11-25T23:10:00Z');
  const [year, month, day, hour, minute, second = 0] = found.slice(1).map((part) => (part ? Number(part) : 0));
  return daysSince1970(year!, month!, day!) * MINUTES_A_DAY + hour! * 60 + minute! + second / 60;
}

/** Hours from the first moment to the second; negative where the second came first. */
export const hoursBetween = (from: string, to: string): number => (minutesAt(to) - minutesAt(from)) / 60;

/** The number of the calendar day at a place so many minutes east of UTC. */
export const dayAt = (moment: string, minutesEastOfUtc: number): number =>
  Math.floor((minutesAt(moment) + minutesEastOfUtc) / MINUTES_A_DAY);

/** Days of the proleptic Gregorian calendar, years counted from March. */
function daysSince1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}
