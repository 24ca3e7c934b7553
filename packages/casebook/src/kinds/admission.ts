/** How the patient came: who found it, where, hurt how; who decides; what was decided. Written by whoever takes the call. */
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import type { Frozen } from '../frozen.ts';
import { timeSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

const line = z.string().max(300);
const seen = z.enum(['yes', 'no', 'not looked']);

/** Where it was found, and so where it goes back. Words always; degrees where a map reference or the device gave them. */
const place = z.strictObject({
  words: line.min(1),
  /** As typed: a grid reference, a postcode; empty where there is none. */
  mapReference: line,
  latitudeDeg: z.number().min(-90).max(90).nullable(),
  longitudeDeg: z.number().min(-180).max(180).nullable(),
});

const admission = {
  finder: z.strictObject({ name: line, contact: line }),
  rescue: z.strictObject({ name: line, contact: line }),
  place,
  foundAt: timeSchema.nullable(),
  /** A car, a cat, a fall: as told. */
  cause: line,
  /** Which scale weighed it. */
  scale: line,
  /** Has milk, or young that wait for it. */
  inMilk: seen,
  wound: z.enum(['closed', 'open', 'not looked']),
  boneShows: z.enum(['no', 'moist', 'dried out', 'not looked']),
  /** Feels below the break. */
  feels: seen,
  /** Warm and pink below the break. */
  bloodReaches: seen,
  otherInjuries: line,
  /** What it was given before it came, with times, as told. */
  givenBefore: line,
  /** Who decides on treatment, and on putting it to sleep. */
  decides: line,
  consent: z.enum(['given', 'asked', 'not needed', 'not asked']),
};

/** What was said; anything left out stays as it was. */
export const admissionNoted = z
  .strictObject(admission)
  .partial()
  .refine((said) => Object.keys(said).length > 0, 'an admission note says at least one thing');

export const COURSES = ['operate', 'splint', 'rest', 'pin alone', 'amputation', 'put to sleep', 'wait'] as const;

export const courseDecided = z.strictObject({
  course: z.enum(COURSES),
  /** Who decided, where that is not who signs. */
  decidedBy: line.min(1),
});

export type Admission = Frozen<z.output<z.ZodObject<typeof admission>>>;
export type Course = (typeof COURSES)[number];
export type AdmissionEvent = EventOf<'admission-noted' | 'course-decided'>;

export interface Admitted {
  /** All that was said so far; what was not said is missing. */
  readonly noted: Signed<Partial<Admission>> | null;
  /** In order; the last one stands. */
  readonly decisions: readonly Signed<EventOf<'course-decided'>['payload']>[];
}

export const notAdmitted: Admitted = { noted: null, decisions: [] };

export function applyAdmission(admitted: Admitted, event: AdmissionEvent): Admitted {
  if (event.kind === 'course-decided')
    return { ...admitted, decisions: [...admitted.decisions, signed(event, event.payload)] };
  const said = Object.fromEntries(Object.entries(event.payload).filter(([, value]) => value !== undefined));
  return { ...admitted, noted: signed(event, { ...admitted.noted?.value, ...said }) };
}

const NAMES: Record<keyof Admission, string> = {
  finder: 'finder',
  rescue: 'rescue',
  place: 'place found',
  foundAt: 'time found',
  cause: 'cause',
  scale: 'scale',
  inMilk: 'milk or young',
  wound: 'wound',
  boneShows: 'exposed bone',
  feels: 'feeling',
  bloodReaches: 'blood supply',
  otherInjuries: 'other injuries',
  givenBefore: 'treatment before',
  decides: 'who decides',
  consent: 'consent',
};

export function admissionSentence(event: AdmissionEvent): string {
  if (event.kind === 'course-decided') return `Decided by ${event.payload.decidedBy}: ${event.payload.course}.`;
  const said = Object.entries(NAMES).flatMap(([key, name]) => (key in event.payload ? [name] : []));
  return `Admission noted: ${said.join(', ')}.`;
}
