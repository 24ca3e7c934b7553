/** When a patient is cold, as far as anybody published it for its kind. */
import { type Entry, entry } from '@bonewright/evidence';
import { usualOf } from './lanes.ts';

export interface ColdBelow {
  readonly belowC: number;
  readonly entry: Entry;
  readonly isWeak: boolean;
}

/** The lowest usual temperature of its kind; for a mammal without one, the figure of small mammals in shock. */
export function coldBelow(species: string): ColdBelow {
  const [lowest] = usualOf(species, 'temperatureC').toSorted((a, b) => a.entry.low - b.entry.low);
  if (lowest) return { belowC: lowest.entry.low, entry: lowest.entry, isWeak: lowest.isWeak };
  const found = entry('warmth.small-mammal.shock');
  return { belowC: found.value, entry: found, isWeak: true };
}

/** Degrees an hour between the first and the last of these; null where there is no hour between them to speak of. */
export function trendPerHour(readings: readonly { readonly minutes: number; readonly temperatureC: number }[]) {
  const first = readings[0];
  const last = readings.at(-1);
  if (!first || !last || last.minutes - first.minutes < 1) return null;
  return ((last.temperatureC - first.temperatureC) / (last.minutes - first.minutes)) * 60;
}
