/**
 * Doses as their sources print them, for a veterinary surgeon to accept, change or refuse; none is a default.
 * Amounts are per kilogram of body mass, in mg unless the drug is measured in units (U).
 */
import type { Source, Status } from './entry.ts';

export const DOSE_ROUTES = ['IM', 'SC', 'IV', 'IO', 'IP', 'PO', 'IN', 'local'] as const;
export type DoseRoute = (typeof DOSE_ROUTES)[number];

export const DOSE_USES = [
  'sedation',
  'anaesthesia',
  'pain relief',
  'local anaesthetic',
  'reversal',
  'infection',
  'emergency',
  'other',
] as const;
export type DoseUse = (typeof DOSE_USES)[number];

/** `current` figures make the published range; the others are shown beside it and never widen it. */
export type Standing = 'current' | 'older' | 'withdrawn' | 'suspect' | 'no effect' | 'toxic';

export interface DoseFigure {
  readonly id: string;
  readonly drug: string;
  readonly low: number;
  readonly high: number;
  /** Empty where the source names none. */
  readonly routes: readonly DoseRoute[];
  readonly use: DoseUse;
  /** Hours between doses, shortest and longest. */
  readonly everyHours?: readonly [number, number];
  /** How long the effect or half the drug was measured to last, hours. */
  readonly lastsHours?: number;
  /** What it was given together with, with its dose. */
  readonly together?: string;
  /** The animals of the source, in its words. */
  readonly studied: string;
  /** Patients for whom this is a figure of their own species. */
  readonly own: readonly string[];
  readonly animals: 'birds' | 'mammals' | 'reptiles';
  /** Whether it was written for its animals in general, without naming a species. */
  readonly isGeneral?: true;
  readonly n?: number;
  readonly standing: Standing;
  readonly source: Source;
  readonly status: Status;
  /** Figures that say otherwise, and how. */
  readonly conflicts?: { readonly ids: readonly string[]; readonly why: string };
  readonly note?: string;
}

export interface Strength {
  /** mg/ml, or U/ml for a drug measured in units. */
  readonly perMl: number;
  readonly status: Status;
  readonly note?: string;
}

export interface Caution {
  readonly words: string;
  /** Only these patients; everyone where absent. */
  readonly own?: readonly string[];
  readonly routes?: readonly DoseRoute[];
  /** Whether a reason is asked before it is signed. */
  readonly isStop: boolean;
  readonly source: Source;
  readonly status: Status;
}

export interface Schedule {
  readonly place: 'United Kingdom' | 'United States';
  readonly says: string;
  readonly source: Source;
  readonly status: Status;
  /** Text in circulation that is out of date. */
  readonly stale?: string;
}

export interface Drug {
  readonly id: string;
  readonly name: string;
  /** Drugs of one family add their effects. */
  readonly family: string;
  readonly unit: 'mg' | 'U';
  readonly strengths: readonly Strength[];
  readonly cautions?: readonly Caution[];
  readonly schedules?: readonly Schedule[];
}

const problems = (f: DoseFigure): string[] =>
  [
    !/^[a-z0-9-]+(\.[a-z0-9-]+)+$/.test(f.id) && 'its id is not dotted lower case',
    !(f.low > 0 && f.low <= f.high && Number.isFinite(f.high)) && 'its range is not a range',
    !f.studied && 'it does not say which animals',
    !f.source.title && 'it has no source',
    f.status === 'memory' && f.standing !== 'current' && 'a recalled figure cannot be ranked',
  ].filter((p): p is string => typeof p === 'string');

/** Freezes figures; refuses one without animals, source or a range. */
export function defineDoses<const T extends readonly DoseFigure[]>(figures: T): T {
  for (const f of figures) {
    const found = problems(f);
    if (found.length > 0) throw new Error(`dose ${f.id}: ${found.join(', ')}`);
  }
  return Object.freeze(figures);
}
