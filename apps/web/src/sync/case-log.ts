/**
 * One case as this device sees it: what the server has recorded, then what waits here, numbered on from there.
 * Plain records; every function returns a new one.
 */
import {
  applyEvent,
  type CaseEvent,
  type CaseState,
  emptyCase,
  isKnown,
  type RecordedEvent,
  SCHEMA_VERSION,
} from '@bonewright/casebook';
import type { NewEvent } from './new-event.ts';

/** An entry that the server has not acknowledged: everything but its number. */
export type Waiting = NewEvent & {
  readonly id: string;
  readonly caseId: string;
  readonly at: string;
  readonly by: string;
  /** Why the server would not take it; null while it may still be sent. */
  readonly refused: string | null;
};

export interface CaseLog {
  readonly caseId: string;
  readonly recorded: readonly RecordedEvent[];
  readonly waiting: readonly Waiting[];
  /** The fold of `recorded`, kept so that an entry costs one step and not all of them. */
  readonly recordedState: CaseState;
}

export const emptyLog = (caseId: string): CaseLog => ({
  caseId,
  recorded: [],
  waiting: [],
  recordedState: emptyCase(caseId),
});

/** Takes in what the server says comes next. Entries that turn out to be recorded wait no longer. */
export function received(log: CaseLog, events: readonly RecordedEvent[]): CaseLog {
  const next = events.filter(({ seq }) => seq > log.recordedState.seq).sort((a, b) => a.seq - b.seq);
  const ids = new Set(events.map(({ id }) => id));
  return {
    ...log,
    recorded: [...log.recorded, ...next],
    recordedState: next.reduce(applyEvent, log.recordedState),
    waiting: log.waiting.filter(({ id }) => !ids.has(id)),
  };
}

export const withWaiting = (log: CaseLog, waiting: readonly Waiting[]): CaseLog => ({ ...log, waiting });

/** Adds entries at the end, each once. */
export function queued(log: CaseLog, entries: readonly Waiting[]): CaseLog {
  const here = new Set([...log.recorded, ...log.waiting].map(({ id }) => id));
  return { ...log, waiting: [...log.waiting, ...entries.filter(({ id }) => !here.has(id))] };
}

/** What may be sent now, numbered after what the server has. */
export function toSend(log: CaseLog): CaseEvent[] {
  return log.waiting
    .filter(({ refused }) => refused === null)
    .map(({ refused: _, ...entry }, i) => ({ ...entry, schema: SCHEMA_VERSION, seq: log.recordedState.seq + 1 + i }))
    .filter((event) => isKnown(event));
}

/** The case as it will stand once everything is sent. */
export const stateOf = (log: CaseLog): CaseState => toSend(log).reduce(applyEvent, log.recordedState);
