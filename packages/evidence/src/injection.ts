/** What may be put into an animal at once, and what a syringe can measure. */
import type { DoseRoute } from './dose-figure.ts';
import type { Source, Status } from './entry.ts';

/** One cell of a published table: each carries its own unit, since the unit changes inside a column. */
export interface VolumeLimit {
  readonly species: string;
  readonly route: DoseRoute;
  /** Null where the table leaves the cell empty. */
  readonly recommended: number | null;
  readonly maximum: number | null;
  readonly unit: 'ml/kg' | 'ml per site';
  readonly source: Source;
  readonly status: Status;
  readonly note?: string;
}

export interface Syringe {
  readonly id: string;
  readonly name: string;
  readonly capacityMl: number;
  readonly markMl: number;
  readonly source: Source;
  readonly status: Status;
}
