import type { Signed } from './case-state.ts';
import type { CaseEvent } from './events.ts';

/** A value with who signed it, when, and by which event. */
export function signed<T>(event: CaseEvent, value: T): Signed<T> {
  const { seq, at, by, why } = event;
  return why === undefined ? { value, seq, at, by } : { value, seq, at, by, why };
}
