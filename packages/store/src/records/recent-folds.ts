/** The folds of the cases written last, so that an event on a long case need not read the case again. */
import type { CaseState } from '@bonewright/casebook';

const KEPT = 32;

export class RecentFolds {
  readonly #folds = new Map<string, { readonly hash: string; readonly state: CaseState }>();

  /** The state after the event with that hash; null where it is not kept. The hash vouches for every event before. */
  find(caseId: string, hash: string): CaseState | null {
    const found = this.#folds.get(caseId);
    return found?.hash === hash ? found.state : null;
  }

  keep(caseId: string, hash: string, state: CaseState): void {
    this.#folds.delete(caseId);
    this.#folds.set(caseId, { hash, state });
    const [oldest] = this.#folds.keys();
    if (this.#folds.size > KEPT && oldest !== undefined) this.#folds.delete(oldest);
  }
}
