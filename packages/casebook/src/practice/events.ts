/**
 * The practice's own record: what it keeps once and not in a case. Signed events like those of a case, in one sequence;
 * PRACTICE stands where they have the case's id. Each subject has its kinds in `kinds/`.
 */
import { z } from 'zod';
import { checked, type ForeignEvent, kindsIn, reader, SCHEMA_VERSION } from '../event-shape.ts';
import type { Frozen } from '../frozen.ts';
import { demonstrationKinds } from './kinds/demonstration.ts';
import { medicineKinds } from './kinds/medicines.ts';
import { stockKinds } from './kinds/stock.ts';

export const practiceEventSchema = z.discriminatedUnion('kind', [
  ...demonstrationKinds,
  ...stockKinds,
  ...medicineKinds,
]);

export type PracticeEvent = Frozen<z.output<typeof practiceEventSchema>>;
export type PracticeKind = PracticeEvent['kind'];
export type PracticePayload<K extends PracticeKind> = Extract<PracticeEvent, { kind: K }>['payload'];
/** An event before its defaults are filled in. */
export type PracticeDraft = Frozen<z.input<typeof practiceEventSchema>>;
export type RecordedPracticeEvent = PracticeEvent | ForeignEvent;

const KINDS = kindsIn(practiceEventSchema.options);
const read = reader(practiceEventSchema, KINDS);

/** Checks a new event and fills in its defaults. Throws InputError with the JSON path. */
export function checkPracticeEvent(draft: unknown): PracticeEvent {
  return checked(practiceEventSchema, draft);
}

/** Reads an event from a record; one from a newer version comes back as a ForeignEvent. Throws InputError where it is neither. */
export function readPracticeEvent(json: unknown): RecordedPracticeEvent {
  return read(json);
}

/** Whether this version understands the event. */
export function isKnownOfPractice(event: RecordedPracticeEvent): event is PracticeEvent {
  return event.schema === SCHEMA_VERSION && KINDS.has(event.kind);
}
