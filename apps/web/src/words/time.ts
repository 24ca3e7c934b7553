/** Times as the ward says them: the hour today, the day before that. */
const hour = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const day = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short' });
const dayAndYear = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const long = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });

const isSameDay = (a: Date, b: Date): boolean => a.toDateString() === b.toDateString();

/** `22:41 today`, `Tue 24 Nov 22:41`, `3 Mar 2025`. */
export function moment(iso: string, now = new Date()): string {
  const at = new Date(iso);
  if (isSameDay(at, now)) return `${hour.format(at)} today`;
  return at.getFullYear() === now.getFullYear() ? `${day.format(at)} ${hour.format(at)}` : dayAndYear.format(at);
}

/** `23:09` today, with the day before it otherwise. */
export function shortMoment(iso: string, now = new Date()): string {
  const at = new Date(iso);
  return isSameDay(at, now) ? hour.format(at) : `${day.format(at)} ${hour.format(at)}`;
}

/** `Tuesday 24 November, 23:31`. */
export const longMoment = (at: Date): string => `${long.format(at)}, ${hour.format(at)}`;

/** A moment as paper keeps it, with its year: `24 Nov 2026, 22:41`. */
export function paperMoment(iso: string): string {
  const at = new Date(iso);
  return `${dayAndYear.format(at)}, ${hour.format(at)}`;
}

const DAY_MS = 86_400_000;

/** Which day it is of something that began then: 1 on the day itself. */
export function dayOf(began: string, now = new Date()): number {
  const midnight = (at: Date): number => new Date(at.getFullYear(), at.getMonth(), at.getDate()).getTime();
  return Math.round((midnight(now) - midnight(new Date(began))) / DAY_MS) + 1;
}

/** For a date-and-time field, in the time of this device: `2026-11-24T22:41`. */
export function toField(at: Date): string {
  const local = new Date(at.getTime() - at.getTimezoneOffset() * 60_000);
  return local.toISOString().slice(0, 16);
}

/** The day on this device: `2026-11-24`. */
export const today = (): string => toField(new Date()).slice(0, 10);

/** `Fri 27 Nov` for `2026-11-27`. */
export const dayWords = (date: string): string => day.format(new Date(`${date}T12:00`));

/** `16:02`, in the time of this device. */
export const hourOf = (iso: string): string => hour.format(new Date(iso));

/** Whether a day has passed, is today, or is still to come. */
export function dueStanding(date: string, now = new Date()): 'overdue' | 'today' | 'ahead' {
  const here = toField(now).slice(0, 10);
  return date < here ? 'overdue' : date === here ? 'today' : 'ahead';
}

/** Tonight and the nights after it, as days. */
export function comingNights(count: number, now = new Date()): string[] {
  const nights = Array.from(
    { length: count },
    (_, i) => new Date(now.getFullYear(), now.getMonth(), now.getDate() + i, 12),
  );
  return nights.map((night) => toField(night).slice(0, 10));
}

/** What such a field says, as ISO text; null where it is no time. */
export function fromField(text: string): string | null {
  const at = new Date(text);
  return Number.isNaN(at.getTime()) ? null : at.toISOString();
}
