/** The folds of the records written last, so that an event on a long record need not read it again. */
const KEPT = 32;

export class RecentFolds<S> {
  readonly #folds = new Map<string, { readonly hash: string; readonly state: S }>();

  /** The state after the event with that hash; null where it is not kept. The hash vouches for every event before. */
  find(caseId: string, hash: string): S | null {
    const found = this.#folds.get(caseId);
    return found?.hash === hash ? found.state : null;
  }

  keep(caseId: string, hash: string, state: S): void {
    this.#folds.delete(caseId);
    this.#folds.set(caseId, { hash, state });
    const [oldest] = this.#folds.keys();
    if (this.#folds.size > KEPT && oldest !== undefined) this.#folds.delete(oldest);
  }
}
