/** One anaesthetic out of a case's readings and marks, and the time axis that it is drawn on. */
import { minutesAt } from '../moments/moment.ts';

/** A longer pause than this, and what follows is another anaesthetic or a watch. Our own choice. */
const PAUSE_MIN = 90;
const SHORTEST_AXIS_MIN = 30;
const TICKS_MIN = [5, 10, 15, 30, 60, 120, 240];
const MOST_TICKS = 8;

interface AtMoment {
  readonly at: string;
}

/** Moments, sorted, in groups with no pause of over an hour and a half inside. */
export function sittings<T extends AtMoment>(moments: readonly T[]): T[][] {
  const sorted = moments.toSorted((a, b) => minutesAt(a.at) - minutesAt(b.at));
  const groups: T[][] = [];
  for (const one of sorted) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    if (last && before && minutesAt(one.at) - minutesAt(before.at) <= PAUSE_MIN) last.push(one);
    else groups.push([one]);
  }
  return groups;
}

export interface TimeAxis {
  /** Minutes since 1970. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
}

/** From the first moment to the last, at least half an hour, with ticks on whole multiples. */
export function timeAxis(first: string, last: string): TimeAxis {
  const from = minutesAt(first);
  const to = Math.max(minutesAt(last), from + SHORTEST_AXIS_MIN);
  const step = TICKS_MIN.find((each) => (to - from) / each <= MOST_TICKS) ?? (to - from) / MOST_TICKS;
  const ticks: number[] = [];
  for (let tick = Math.ceil(from / step) * step; tick <= to; tick += step) ticks.push(tick);
  return { from, to, ticks };
}
