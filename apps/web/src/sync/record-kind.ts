/** What a record is made of: the events of a case, or those of the practice's own record. */
import {
  applyEvent,
  applyPractice,
  type CaseEvent,
  type CaseState,
  checkEvent,
  checkPracticeEvent,
  emptyCase,
  emptyPractice,
  isKnown,
  isKnownOfPractice,
  PRACTICE,
  type PracticeEvent,
  type PracticeState,
  type RecordedEvent,
  type RecordedPracticeEvent,
  readEvent,
  readPracticeEvent,
  SCHEMA_VERSION,
} from '@bonewright/casebook';
import type { NewEvent, NewPracticeEvent } from './new-event.ts';

interface RecordTypes {
  readonly entry: NewEvent | NewPracticeEvent;
  readonly known: CaseEvent | PracticeEvent;
  readonly recorded: RecordedEvent | RecordedPracticeEvent;
  readonly state: CaseState | PracticeState;
}

export interface OfCase extends RecordTypes {
  readonly entry: NewEvent;
  readonly known: CaseEvent;
  readonly recorded: RecordedEvent;
  readonly state: CaseState;
}

export interface OfPractice extends RecordTypes {
  readonly entry: NewPracticeEvent;
  readonly known: PracticeEvent;
  readonly recorded: RecordedPracticeEvent;
  readonly state: PracticeState;
}

export type AnyRecord = OfCase | OfPractice;

interface WaitingHead {
  readonly id: string;
  /** PRACTICE for an entry of the practice's own record. */
  readonly caseId: string;
  readonly at: string;
  readonly by: string;
  /** Why the server would not take it; null while it may still be sent. */
  readonly refused: string | null;
}

/** An entry that the server has not acknowledged: everything but its number. */
export type Waiting<T extends RecordTypes = OfCase> = T['entry'] & WaitingHead;

export type AnyWaiting = Waiting<OfCase> | Waiting<OfPractice>;

export interface RecordKind<T extends RecordTypes> {
  readonly id: string;
  /** Where the server has its events. */
  readonly address: string;
  readonly empty: T['state'];
  readonly apply: (state: T['state'], event: T['recorded']) => T['state'];
  /** Throws InputError where an event says what no record may hold. */
  readonly check: (draft: unknown) => T['known'];
  readonly read: (json: unknown) => T['recorded'];
  /** The entry as an event; null where this version does not know its kind. */
  readonly numbered: (entry: Waiting<T>, seq: number) => T['known'] | null;
  readonly isRecorded: (event: AnyRecord['recorded']) => event is T['recorded'];
  /** Those entries that are of this kind of record. */
  readonly ofThese: (entries: readonly AnyWaiting[]) => readonly Waiting<T>[];
}

export const caseKind = (caseId: string): RecordKind<OfCase> => ({
  id: caseId,
  address: `/api/cases/${caseId}/events`,
  empty: emptyCase(caseId),
  apply: applyEvent,
  check: checkEvent,
  read: readEvent,
  numbered: ({ refused: _, ...entry }, seq) => {
    const event = { ...entry, schema: SCHEMA_VERSION, seq };
    return isKnown(event) ? event : null;
  },
  isRecorded: (event): event is RecordedEvent => event.caseId !== PRACTICE,
  ofThese: (entries) => entries.filter((entry): entry is Waiting<OfCase> => entry.caseId !== PRACTICE),
});

export const practiceKind: RecordKind<OfPractice> = {
  id: PRACTICE,
  address: '/api/practice/events',
  empty: emptyPractice,
  apply: applyPractice,
  check: checkPracticeEvent,
  read: readPracticeEvent,
  numbered: ({ refused: _, ...entry }, seq) => {
    const event = { ...entry, caseId: PRACTICE, schema: SCHEMA_VERSION, seq };
    return isKnownOfPractice(event) ? event : null;
  },
  isRecorded: (event): event is RecordedPracticeEvent => event.caseId === PRACTICE,
  ofThese: (entries) => entries.filter((entry): entry is Waiting<OfPractice> => entry.caseId === PRACTICE),
};
