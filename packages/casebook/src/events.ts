/**
 * A case is a sequence of signed events: who, when, what, why. Nothing is updated in place; a correction is a new event.
 * `seq` counts from 1 within the case and is its order; `at` is what the writer's clock said and orders nothing.
 */
import { z } from 'zod';
import {
  checked,
  type ForeignEvent,
  kindOf,
  kindsIn,
  PRACTICE,
  reader,
  SCHEMA_VERSION,
  signedHead,
} from './event-shape.ts';
import type { Frozen } from './frozen.ts';
import * as admission from './kinds/admission.ts';
import * as care from './kinds/care.ts';
import * as chart from './kinds/chart.ts';
import * as course from './kinds/course.ts';
import { doseGiven, doseProposed, doseSigned, doseVoided } from './kinds/doses.ts';
import { handMeasured, handMeasureTakenBack } from './kinds/hand-measures.ts';
import * as payloads from './payloads.ts';

const head = {
  ...signedHead,
  caseId: payloads.idSchema.refine((id) => id !== PRACTICE, 'that is the name of the practice’s own record'),
};

const kind = <K extends string, P extends z.ZodType>(name: K, payload: P) => kindOf(head, name, payload);

export const eventSchema = z.discriminatedUnion('kind', [
  kind('case-opened', payloads.caseOpened),
  kind('patient-amended', payloads.patientAmended),
  kind('film-added', payloads.filmAdded),
  kind('film-removed', payloads.filmRemoved),
  kind('film-view-set', payloads.filmViewSet),
  kind('film-occasion-set', payloads.filmOccasionSet),
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
  kind('admission-noted', admission.admissionNoted),
  kind('course-decided', admission.courseDecided),
  kind('reading-taken', chart.readingTaken),
  kind('reading-taken-back', chart.readingTakenBack),
  kind('chart-marked', chart.chartMarked),
  kind('blood-lost', chart.bloodLost),
  kind('fluid-given', chart.fluidGiven),
  kind('fluids-planned', chart.fluidsPlanned),
  kind('feed-planned', chart.feedPlanned),
  kind('check-ticked', chart.checkTicked),
  kind('weighed', care.weighed),
  kind('fed', care.fed),
  kind('pin-site-seen', care.pinSiteSeen),
  kind('limb-use-seen', care.limbUseSeen),
  kind('photo-added', care.photoAdded),
  kind('question-asked', care.questionAsked),
  kind('question-answered', care.questionAnswered),
  kind('aftercare-planned', care.aftercarePlanned),
  kind('union-judged', course.unionJudged),
  kind('frame-off-decided', course.frameOffDecided),
  kind('frame-taken-off', course.frameTakenOff),
  kind('recheck-set', course.recheckSet),
  kind('readiness-noted', course.readinessNoted),
  kind('limit-chosen', course.limitChosen),
  kind('forecast-noted', course.forecastNoted),
  kind('released', course.released),
  kind('sighted', course.sighted),
  kind('bone-outcome', course.boneOutcome),
  kind('patient-outcome', course.patientOutcome),
  kind('dose-proposed', doseProposed),
  kind('dose-signed', doseSigned),
  kind('dose-given', doseGiven),
  kind('dose-voided', doseVoided),
]);

export type CaseEvent = Frozen<z.output<typeof eventSchema>>;
export type EventKind = CaseEvent['kind'];
export type EventOf<K extends EventKind> = Extract<CaseEvent, { kind: K }>;
export type Payload<K extends EventKind> = EventOf<K>['payload'];
/** An event before its defaults are filled in. */
export type EventDraft = Frozen<z.input<typeof eventSchema>>;

export type RecordedEvent = CaseEvent | ForeignEvent;

const KINDS = kindsIn(eventSchema.options);
const read = reader(eventSchema, KINDS);

/** Checks a new event and fills in its defaults. Throws InputError with the JSON path. */
export function checkEvent(draft: unknown): CaseEvent {
  return checked(eventSchema, draft);
}

/** Reads an event from a record; one from a newer version comes back as a ForeignEvent. Throws InputError where it is neither. */
export function readEvent(json: unknown): RecordedEvent {
  return read(json);
}

/** Whether this version understands the event. */
export function isKnown(event: RecordedEvent): event is CaseEvent {
  return event.schema === SCHEMA_VERSION && KINDS.has(event.kind);
}
