import type { RecordedPracticeEvent } from './events.ts';
import type { Medicines } from './kinds/medicines.ts';
import type { Stock } from './kinds/stock.ts';

/** What the practice keeps once, at one moment: the fold of its record. */
export interface PracticeState {
  /** The number of the last event; 0 before the first. */
  readonly seq: number;
  readonly changedAt: string;
  readonly stock: Stock;
  readonly medicines: Medicines;
  /** Events that say nothing here, and why. */
  readonly setAside: readonly { readonly event: RecordedPracticeEvent; readonly because: string }[];
}
