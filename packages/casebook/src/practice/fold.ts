/** Folds the practice's record into its state. Pure; never refuses a record: what cannot be applied is set aside with the reason. */
import { InputError } from '@bonewright/fault';
import { isKnownOfPractice, type PracticeEvent, type RecordedPracticeEvent } from './events.ts';
import { applyMedicines, emptyMedicines, isOfMedicines } from './kinds/medicines.ts';
import { applyStock, emptyStock, isOfStock, withoutDemonstration } from './kinds/stock.ts';
import type { PracticeState } from './practice-state.ts';
import type { Refusal } from './refusal.ts';

export const emptyPractice: PracticeState = {
  seq: 0,
  changedAt: '',
  stock: emptyStock,
  medicines: emptyMedicines,
  setAside: [],
};

/** The state after all of these events, in order. Throws InputError where one is missing. */
export function foldPractice(events: readonly RecordedPracticeEvent[]): PracticeState {
  return events.reduce(applyPractice, emptyPractice);
}

/** The state after one more event. Throws InputError where it is not the next one. */
export function applyPractice(state: PracticeState, event: RecordedPracticeEvent): PracticeState {
  if (event.seq !== state.seq + 1)
    throw new InputError(`event ${event.seq} follows event ${state.seq}`, 'seq', 'read the events between them first');
  const next = { ...state, seq: event.seq, changedAt: event.at };
  const applied = isKnownOfPractice(event)
    ? apply(next, event)
    : { because: 'it was written by a newer version of Bonewright' };
  if (!('because' in applied)) return applied;
  return { ...next, setAside: [...state.setAside, { event, because: applied.because }] };
}

function apply(state: PracticeState, event: PracticeEvent): PracticeState | Refusal {
  if (isOfStock(event)) return within(applyStock(state.stock, event), (stock) => ({ ...state, stock }));
  if (isOfMedicines(event))
    return within(applyMedicines(state.medicines, event), (medicines) => ({ ...state, medicines }));
  return { ...state, stock: withoutDemonstration(state.stock) };
}

function within<S extends object>(slice: S | Refusal, put: (slice: S) => PracticeState): PracticeState | Refusal {
  return 'because' in slice ? slice : put(slice);
}
