/** Every evidence entry a plan's checks rest on, in words, each once. */
import type { Plan } from '@bonewright/construct';
import { type Entry, entry } from '@bonewright/evidence';

/** Entries named by the checks of the plan, by id. */
export function sourcesOf(plan: Plan): Entry[] {
  const ids = new Set(plan.checks.flatMap((check) => check.evidence));
  return [...ids].sort().map(entry);
}

const STATUS: Record<Entry['status'], string> = {
  seen: 'read in the source',
  memory: 'from memory, unverified',
  computed: 'computed here',
  'common practice': 'common practice, no source',
};

/** Value, range and unit of an entry: `25 % (20 to 30)`. */
export function entryFigure({ value, low, high, unit }: Entry): string {
  const range = low === high ? '' : ` (${digits(low)} to ${digits(high)})`;
  return `${digits(value)}${unit === '1' ? '' : ` ${unit}`}${range}`;
}

/** Where an entry comes from, and how sure that is. */
export function entrySource({ source, status }: Entry): string {
  const parts = [source.title, source.year, source.place, source.doi && `doi ${source.doi}`].filter(Boolean);
  return `${parts.join(', ')}. ${STATUS[status]}.`;
}

const digits = (value: number): string => String(Number(value.toPrecision(4))).replace('-', '−');
