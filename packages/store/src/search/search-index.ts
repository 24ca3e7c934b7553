/** What a database does for search: keeps each case's words, and names the cases that hold all that is asked for. */
import type { Database, DatabaseTransaction } from '../records/tables.ts';

/** The words of one case; `names` are those by which the patient itself is known, `said` is everything. */
export interface CaseWords {
  readonly caseId: string;
  /** The place of the case's last change; `before` is where it stood until now. */
  readonly position: number;
  readonly before: number;
  readonly names: readonly string[];
  readonly said: readonly string[];
}

export interface SearchIndex {
  /** Makes its tables. */
  create(db: Database): Promise<void>;
  replace(tx: DatabaseTransaction, words: CaseWords): Promise<void>;
  /** Forgets the demonstration's cases, which are still listed. */
  forgetDemonstration(tx: DatabaseTransaction): Promise<void>;
  /** The cases in which every one of these begins a word, the last changed first. */
  find(db: Database, asked: readonly string[], where: 'names' | 'said', limit: number): Promise<string[]>;
}
