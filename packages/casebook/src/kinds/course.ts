/** From union to the hedge: who judged it whole, when the frame came off, what was ready, when it went, what became of it. */
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import { idSchema, timeSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

/** A line of a list, as a slug: `tube-and-cuff`. */
const itemSchema = z.string().regex(/^[a-z][a-z0-9-]{1,60}$/, 'an item is a slug of small letters');
const line = z.string().max(500);

/** A fact that somebody signs: the limb is firm under the hand, or the film shows the bone across. */
export const unionJudged = z.strictObject({
  by: z.enum(['hand', 'film']),
  isUnited: z.boolean(),
  words: line,
  filmIds: z.array(idSchema),
});

/** The vet's decision on the frame, on what stands above. Refuses nothing; what is missing needs a reason (`why`). */
export const frameOffDecided = z.strictObject({ isToComeOff: z.boolean(), words: line });

export const frameTakenOff = z.strictObject({
  at: timeSchema,
  /** All that went in came out; anything left behind is said in words. */
  isAllOut: z.boolean(),
  words: line,
});

export const recheckSet = z.strictObject({ on: z.iso.date(), what: line.min(1), who: line });

export const readinessNoted = z
  .strictObject({ item: itemSchema, isMet: z.enum(['yes', 'no', 'not looked', 'does not apply']), words: line })
  .refine(({ isMet, words }) => isMet !== 'does not apply' || words.trim() !== '', {
    message: 'what does not apply says why',
    path: ['words'],
  });

/** Which of several published limits or scales the practice goes by for this patient. */
export const limitChosen = z.strictObject({
  subject: z.string().min(1).max(80),
  evidenceId: z.string().min(1).max(80),
});

export const forecastNoted = z.strictObject({
  night: z.iso.date(),
  lowestC: z.number().min(-60).max(60),
  words: line,
  source: line,
});

export const released = z.strictObject({
  at: timeSchema,
  place: line.min(1),
  isWhereFound: z.boolean(),
  with: line,
  words: line,
});

export const sighted = z.strictObject({ at: timeSchema, place: line, words: line.min(1), by: line });

/** Two outcomes, kept apart. */
export const boneOutcome = z.strictObject({
  bone: z.enum(['healed', 'healed crooked', 'not healed', 'unknown']),
  words: line,
});
export const patientOutcome = z.strictObject({
  patient: z.enum(['released', 'died', 'put to sleep', 'kept', 'moved elsewhere', 'unknown']),
  words: line,
});

export type CourseEvent = EventOf<
  | 'union-judged'
  | 'frame-off-decided'
  | 'frame-taken-off'
  | 'recheck-set'
  | 'readiness-noted'
  | 'limit-chosen'
  | 'forecast-noted'
  | 'released'
  | 'sighted'
  | 'bone-outcome'
  | 'patient-outcome'
>;
type Said<K extends CourseEvent['kind']> = Signed<EventOf<K>['payload']>;

export interface CourseOfCase {
  /** The last word by hand and by film. */
  readonly union: { readonly hand: Said<'union-judged'> | null; readonly film: Said<'union-judged'> | null };
  readonly frameOff: Said<'frame-off-decided'> | null;
  readonly frameTaken: Said<'frame-taken-off'> | null;
  /** In the order of their days. */
  readonly rechecks: readonly Said<'recheck-set'>[];
  /** The last word on each item. */
  readonly readiness: readonly Said<'readiness-noted'>[];
  /** The last choice for each subject. */
  readonly limits: readonly Said<'limit-chosen'>[];
  readonly forecast: Said<'forecast-noted'> | null;
  readonly released: Said<'released'> | null;
  readonly sightings: readonly Said<'sighted'>[];
  readonly bone: Said<'bone-outcome'> | null;
  readonly patient: Said<'patient-outcome'> | null;
}

export const courseBegins: CourseOfCase = {
  union: { hand: null, film: null },
  frameOff: null,
  frameTaken: null,
  rechecks: [],
  readiness: [],
  limits: [],
  forecast: null,
  released: null,
  sightings: [],
  bone: null,
  patient: null,
};

export function applyCourse(course: CourseOfCase, event: CourseEvent): CourseOfCase {
  switch (event.kind) {
    case 'union-judged':
      return { ...course, union: { ...course.union, [event.payload.by]: signed(event, event.payload) } };
    case 'frame-off-decided':
      return { ...course, frameOff: signed(event, event.payload) };
    case 'frame-taken-off':
      return { ...course, frameTaken: signed(event, event.payload) };
    case 'recheck-set': {
      const rechecks = [...course.rechecks, signed(event, event.payload)];
      return { ...course, rechecks: rechecks.toSorted((a, b) => (a.value.on < b.value.on ? -1 : 1)) };
    }
    case 'readiness-noted': {
      const others = course.readiness.filter(({ value }) => value.item !== event.payload.item);
      return { ...course, readiness: [...others, signed(event, event.payload)] };
    }
    case 'limit-chosen': {
      const others = course.limits.filter(({ value }) => value.subject !== event.payload.subject);
      return { ...course, limits: [...others, signed(event, event.payload)] };
    }
    case 'forecast-noted':
      return { ...course, forecast: signed(event, event.payload) };
    case 'released':
      return { ...course, released: signed(event, event.payload) };
    case 'sighted':
      return { ...course, sightings: [...course.sightings, signed(event, event.payload)] };
    case 'bone-outcome':
      return { ...course, bone: signed(event, event.payload) };
    case 'patient-outcome':
      return { ...course, patient: signed(event, event.payload) };
  }
}

export function courseSentence(event: CourseEvent): string {
  const { kind, payload } = event;
  switch (kind) {
    case 'union-judged':
      return `Union by ${payload.by}: ${payload.isUnited ? 'united' : 'not united'}${after(payload.words)}.`;
    case 'frame-off-decided':
      return `${payload.isToComeOff ? 'The frame is to come off' : 'The frame stays on'}${after(payload.words)}.`;
    case 'frame-taken-off':
      return `Frame taken off, ${payload.isAllOut ? 'all implants out' : 'not all implants out'}${after(payload.words)}.`;
    case 'recheck-set':
      return `Recheck set for ${payload.on}: ${payload.what}.`;
    case 'readiness-noted':
      return `Ready for release, ${payload.item.replaceAll('-', ' ')}: ${payload.isMet}${after(payload.words)}.`;
    case 'limit-chosen':
      return `Chosen for ${payload.subject.replaceAll('-', ' ')}: ${payload.evidenceId}.`;
    case 'forecast-noted':
      return `Forecast for the night of ${payload.night}: lowest ${payload.lowestC} °C${after(payload.words)}.`;
    case 'released':
      return `Released at ${payload.place}${payload.isWhereFound ? ', where it was found' : ''}${after(payload.words)}.`;
    case 'sighted':
      return `Seen again: ${payload.words}`;
    case 'bone-outcome':
      return `Outcome of the bone: ${payload.bone}${after(payload.words)}.`;
    case 'patient-outcome':
      return `Outcome of the patient: ${payload.patient}${after(payload.words)}.`;
  }
}

const after = (words: string): string => (words ? `, ${words}` : '');
