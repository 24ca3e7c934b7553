/** One constant of the trade: its value, how far it may be off, whom it applies to, and who says so. */

/** `seen` = read in the source; `memory` = recalled, unverified; `computed` = worked out here; `common practice` = no source. */
export type Status = 'seen' | 'memory' | 'computed' | 'common practice';

export interface Source {
  readonly title: string;
  readonly year?: number;
  /** Page, table, figure, section. */
  readonly place?: string;
  readonly doi?: string;
}

export interface Entry {
  /** Dotted, for ever: `steel.cold-worked.yield`. */
  readonly id: string;
  readonly name: string;
  /** `1` for a plain ratio. */
  readonly unit: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What low and high mean. */
  readonly spread: '95 %' | 'range' | 'sd' | 'exact';
  readonly appliesTo: string;
  readonly source: Source;
  readonly status: Status;
  /** Entries that say otherwise, and why this one is the default. */
  readonly conflicts?: { readonly ids: readonly string[]; readonly why: string };
  readonly note?: string;
}

const problems = (e: Entry): string[] =>
  [
    !/^[a-z0-9-]+(\.[a-z0-9-]+)+$/.test(e.id) && 'its id is not dotted lower case',
    !e.name && 'it has no name',
    !e.unit && 'it has no unit',
    !e.source.title && 'it has no source',
    ![e.value, e.low, e.high].every(Number.isFinite) && 'a figure is not finite',
    !(e.low <= e.value && e.value <= e.high) && 'its value lies outside its range',
  ].filter((p): p is string => typeof p === 'string');

/** Freezes a set of entries; refuses one without source, unit or a value inside its range. */
export function defineSet<const T extends readonly Entry[]>(entries: T): T {
  for (const e of entries) {
    const found = problems(e);
    if (found.length > 0) throw new Error(`evidence ${e.id}: ${found.join(', ')}`);
  }
  return Object.freeze(entries);
}
