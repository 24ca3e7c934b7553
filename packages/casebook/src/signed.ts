import type { Signed } from './case-state.ts';

type SignedBy = Omit<Signed<unknown>, 'value'>;

/** A value with who signed it, when, and by which event. */
export function signed<T>(event: SignedBy, value: T): Signed<T> {
  const { seq, at, by, why } = event;
  return why === undefined ? { value, seq, at, by } : { value, seq, at, by, why };
}
