/**
 * One record as this device sees it: what the server has recorded, then what waits here, numbered on from there.
 * Plain records; every function returns a new one.
 */
import type { AnyRecord, RecordKind, Waiting } from './record-kind.ts';

export interface RecordLog<T extends AnyRecord> {
  readonly kind: RecordKind<T>;
  readonly recorded: readonly T['recorded'][];
  readonly waiting: readonly Waiting<T>[];
  /** The fold of `recorded`, kept so that an entry costs one step and not all of them. */
  readonly recordedState: T['state'];
}

export const emptyLog = <T extends AnyRecord>(kind: RecordKind<T>): RecordLog<T> => ({
  kind,
  recorded: [],
  waiting: [],
  recordedState: kind.empty,
});

/** Takes in what the server says comes next. Entries that turn out to be recorded wait no longer. */
export function received<T extends AnyRecord>(log: RecordLog<T>, events: readonly T['recorded'][]): RecordLog<T> {
  const next = events.filter(({ seq }) => seq > log.recordedState.seq).sort((a, b) => a.seq - b.seq);
  const ids = new Set(events.map(({ id }) => id));
  return {
    ...log,
    recorded: [...log.recorded, ...next],
    recordedState: next.reduce(log.kind.apply, log.recordedState),
    waiting: log.waiting.filter(({ id }) => !ids.has(id)),
  };
}

export const withWaiting = <T extends AnyRecord>(log: RecordLog<T>, waiting: readonly Waiting<T>[]): RecordLog<T> => ({
  ...log,
  waiting,
});

/** Adds entries at the end, each once. */
export function queued<T extends AnyRecord>(log: RecordLog<T>, entries: readonly Waiting<T>[]): RecordLog<T> {
  const here = new Set([...log.recorded, ...log.waiting].map(({ id }) => id));
  return { ...log, waiting: [...log.waiting, ...entries.filter(({ id }) => !here.has(id))] };
}

/** What may be sent now, numbered after what the server has. */
export function toSend<T extends AnyRecord>({ kind, waiting, recordedState }: RecordLog<T>): T['known'][] {
  return waiting
    .filter(({ refused }) => refused === null)
    .map((entry, i) => kind.numbered(entry, recordedState.seq + 1 + i))
    .filter((event) => event !== null);
}

/** The record as it will stand once everything is sent. */
export const stateOf = <T extends AnyRecord>(log: RecordLog<T>): T['state'] =>
  toSend(log).reduce(log.kind.apply, log.recordedState);
