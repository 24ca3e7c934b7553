/**
 * A case is a sequence of signed events: who, when, what, why. Nothing is updated in place; a correction is a new event.
 * `seq` counts from 1 within the case and is its order; `at` is what the writer's clock said and orders nothing.
 */
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import type { Frozen } from './frozen.ts';
import { handMeasured, handMeasureTakenBack } from './kinds/hand-measures.ts';
import * as payloads from './payloads.ts';

/** Raised when the meaning of a payload changes; every older version stays readable. */
export const SCHEMA_VERSION = 1;

const head = {
  id: payloads.idSchema,
  caseId: payloads.idSchema,
  seq: z.number().int().positive(),
  at: payloads.timeSchema,
  /** Who signs it. */
  by: z.string().min(1).max(200),
  /** Why, where it is a correction or a decision. */
  why: z.string().min(1).max(2000).exactOptional(),
};

function kind<K extends string, P extends z.ZodType>(name: K, payload: P) {
  return z.strictObject({ schema: z.literal(SCHEMA_VERSION), ...head, kind: z.literal(name), payload });
}

export const eventSchema = z.discriminatedUnion('kind', [
  kind('case-opened', payloads.caseOpened),
  kind('patient-amended', payloads.patientAmended),
  kind('film-added', payloads.filmAdded),
  kind('film-removed', payloads.filmRemoved),
  kind('film-view-set', payloads.filmViewSet),
  kind('film-calibrated', payloads.filmCalibrated),
  kind('film-clicked', payloads.filmClicked),
  kind('film-traced', payloads.filmTraced),
  kind('film-corrected', payloads.filmCorrected),
  kind('fracture-marked', payloads.fractureMarked),
  kind('hand-measured', handMeasured),
  kind('hand-measure-taken-back', handMeasureTakenBack),
  kind('bone-joined', payloads.boneJoined),
  kind('bone-reduced', payloads.boneReduced),
  kind('fracture-described', payloads.fractureDescribed),
  kind('keep-out-set', payloads.keepOutSet),
  kind('corridors-set', payloads.corridorsSet),
  kind('soft-tissue-set', payloads.softTissueSet),
  kind('drawer-set', payloads.drawerSet),
  kind('construct-chosen', payloads.constructChosen),
  kind('plans-ranked', payloads.plansRanked),
  kind('sheet-printed', payloads.sheetPrinted),
  kind('stage-entered', payloads.stageEntered),
  kind('note-added', payloads.noteAdded),
  kind('pin-placed', payloads.pinPlaced),
  kind('pin-skipped', payloads.pinSkipped),
  kind('pin-taken-back', payloads.pinTakenBack),
  kind('putty-mixed', payloads.puttyMixed),
  kind('putty-hard', payloads.puttyHard),
  kind('counted', payloads.counted),
  kind('bench-tested', payloads.benchTested),
  kind('plan-placed', payloads.planPlaced),
  kind('cortices-scored', payloads.corticesScored),
]);

export type CaseEvent = Frozen<z.output<typeof eventSchema>>;
export type EventKind = CaseEvent['kind'];
export type EventOf<K extends EventKind> = Extract<CaseEvent, { kind: K }>;
export type Payload<K extends EventKind> = EventOf<K>['payload'];
/** An event before its defaults are filled in. */
export type EventDraft = Frozen<z.input<typeof eventSchema>>;

const foreignSchema = z.looseObject({
  schema: z.number().int().positive(),
  id: head.id,
  caseId: head.caseId,
  seq: head.seq,
  at: z.string(),
  by: z.string(),
  kind: z.string().min(1),
  payload: z.unknown(),
});

/** An event written by a newer version: kept word for word, not understood. */
export type ForeignEvent = Frozen<z.output<typeof foreignSchema>>;
export type RecordedEvent = CaseEvent | ForeignEvent;

const KINDS: ReadonlySet<string> = new Set(eventSchema.options.map((option) => option.shape.kind.value));

/** Checks a new event and fills in its defaults. Throws InputError with the JSON path. */
export function checkEvent(draft: unknown): CaseEvent {
  return checked(eventSchema, draft);
}

/** Reads an event from a record; one from a newer version comes back as a ForeignEvent. Throws InputError where it is neither. */
export function readEvent(json: unknown): RecordedEvent {
  const known = eventSchema.safeParse(json);
  if (known.success) return known.data;
  const foreign = foreignSchema.safeParse(json);
  const isNewer = foreign.success && (foreign.data.schema > SCHEMA_VERSION || !KINDS.has(foreign.data.kind));
  if (isNewer) return foreign.data;
  throw asInputError(known.error);
}

/** Whether this version understands the event. */
export function isKnown(event: RecordedEvent): event is CaseEvent {
  return event.schema === SCHEMA_VERSION && KINDS.has(event.kind);
}

function checked<S extends z.ZodType>(schema: S, value: unknown): z.output<S> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw asInputError(result.error);
}

function asInputError(error: z.ZodError): InputError {
  const issue = error.issues[0];
  return new InputError(
    issue?.message ?? 'this is not an event',
    issue?.path.join('.') ?? '',
    'correct it and send it again',
  );
}
