/** Day by day, by carers and nurses: weight, food, pin sites, limb, photographs, questions. Nothing that only a vet may do. */
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import { idSchema, timeSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

const line = z.string().max(500);
const photo = z.strictObject({
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 is 64 lower-case hex digits'),
  fileName: z.string().max(200),
  byteLength: z.number().int().positive(),
});

export const weighed = z.strictObject({
  at: timeSchema,
  massG: z.number().positive().max(50_000),
  /** With the frame on, it weighs that much more. */
  withFrame: z.boolean(),
  scale: line,
});

export const fed = z.strictObject({
  at: timeSchema,
  feed: line.min(1),
  grams: z.number().min(0).max(5000).nullable(),
  ate: z.enum(['all', 'most', 'some', 'nothing']),
  note: line,
});

/** A pin's skin as somebody saw it: words of the scale that the practice chose, or plain words. */
export const pinSiteSeen = z.strictObject({
  at: timeSchema,
  /** Counted from 1 as on the plan; null for all of them. */
  pin: z.number().int().positive().nullable(),
  /** The id of a published scale, or `plain words`. */
  scale: z.string().min(1).max(80),
  grade: z.string().min(1).max(80),
  words: line,
  photo: photo.nullable(),
  /** A person looked at the animal, not at a photograph only. */
  isSeenInPerson: z.boolean(),
});

export const limbUseSeen = z.strictObject({
  at: timeSchema,
  /** Which scale, named by who uses it: none is agreed. */
  scale: z.string().min(1).max(80),
  grade: z.string().min(1).max(80),
  words: line,
});

export const photoAdded = z.strictObject({ at: timeSchema, photo, words: line });

export const questionAsked = z.strictObject({ questionId: idSchema, at: timeSchema, words: line.min(1) });
export const questionAnswered = z.strictObject({ questionId: idSchema, words: z.string().min(1).max(2000) });

/** What carers are asked to do, as the vet wrote it; it is what the discharge sheet says. */
export const aftercarePlanned = z.strictObject({
  /** Each in a carer's words: what, how much in ml or g, when. */
  tasks: z.array(z.strictObject({ what: line.min(1), when: line.min(1), doseId: idSchema.nullable() })).max(40),
  lookFor: z.array(line.min(1)).max(40),
  ringWhen: z.array(line.min(1)).max(40),
  phone: line,
  housing: line,
  recheckOn: z.iso.date().nullable(),
});

export type CareEvent = EventOf<
  | 'weighed'
  | 'fed'
  | 'pin-site-seen'
  | 'limb-use-seen'
  | 'photo-added'
  | 'question-asked'
  | 'question-answered'
  | 'aftercare-planned'
>;
type Said<K extends CareEvent['kind']> = Signed<EventOf<K>['payload']>;

export interface Question {
  readonly asked: Said<'question-asked'>;
  readonly answered: Said<'question-answered'> | null;
}

/** All in the order in which they were written. */
export interface Care {
  readonly weights: readonly Said<'weighed'>[];
  readonly meals: readonly Said<'fed'>[];
  readonly pinSites: readonly Said<'pin-site-seen'>[];
  readonly limbUse: readonly Said<'limb-use-seen'>[];
  readonly photos: readonly Said<'photo-added'>[];
  readonly questions: readonly Question[];
  readonly aftercare: Said<'aftercare-planned'> | null;
}

export const noCare: Care = {
  weights: [],
  meals: [],
  pinSites: [],
  limbUse: [],
  photos: [],
  questions: [],
  aftercare: null,
};

/** The care after one more event; a word why not where it answers a question that nobody asked. */
export function applyCare(care: Care, event: CareEvent): Care | string {
  switch (event.kind) {
    case 'weighed':
      return { ...care, weights: [...care.weights, signed(event, event.payload)] };
    case 'fed':
      return { ...care, meals: [...care.meals, signed(event, event.payload)] };
    case 'pin-site-seen':
      return { ...care, pinSites: [...care.pinSites, signed(event, event.payload)] };
    case 'limb-use-seen':
      return { ...care, limbUse: [...care.limbUse, signed(event, event.payload)] };
    case 'photo-added':
      return { ...care, photos: [...care.photos, signed(event, event.payload)] };
    case 'question-asked':
      return { ...care, questions: [...care.questions, { asked: signed(event, event.payload), answered: null }] };
    case 'question-answered':
      return answered(care, event);
    case 'aftercare-planned':
      return { ...care, aftercare: signed(event, event.payload) };
  }
}

function answered(care: Care, event: EventOf<'question-answered'>): Care | string {
  const isIt = ({ asked }: Question) => asked.value.questionId === event.payload.questionId;
  if (!care.questions.some(isIt)) return 'nobody asked that question';
  const questions = care.questions.map((q) => (isIt(q) ? { ...q, answered: signed(event, event.payload) } : q));
  return { ...care, questions };
}

export function careSentence(event: CareEvent): string {
  switch (event.kind) {
    case 'weighed':
      return `Weighed: ${event.payload.massG} g${event.payload.withFrame ? ' with the frame' : ''}.`;
    case 'fed':
      return `Fed ${event.payload.feed}${event.payload.grams === null ? '' : `, ${event.payload.grams} g`}: ate ${event.payload.ate}.`;
    case 'pin-site-seen': {
      const { pin, grade, words } = event.payload;
      return `Pin site ${pin === null ? 'of every pin' : `of P${pin}`}: ${grade}${words ? `, ${words}` : ''}.`;
    }
    case 'limb-use-seen':
      return `Use of the limb: ${event.payload.grade}${event.payload.words ? `, ${event.payload.words}` : ''}.`;
    case 'photo-added':
      return `Photograph added${event.payload.words ? `: ${event.payload.words}` : ''}.`;
    case 'question-asked':
      return `Question to the vet: ${event.payload.words}`;
    case 'question-answered':
      return `Answered: ${event.payload.words}`;
    case 'aftercare-planned':
      return `Aftercare written: ${event.payload.tasks.length} tasks${event.payload.recheckOn ? `, recheck on ${event.payload.recheckOn}` : ''}.`;
  }
}
