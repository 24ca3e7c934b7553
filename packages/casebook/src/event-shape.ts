/** What every event has, whichever record it stands in: who, when, which, why; and how an event is checked and read. */
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import type { Frozen } from './frozen.ts';
import { idSchema, timeSchema } from './payloads.ts';

/** Raised when the meaning of a payload changes; every older version stays readable. */
export const SCHEMA_VERSION = 1;

/** Stands where the events of a case have its id: the record of things the practice keeps once. */
export const PRACTICE = 'practice';

export const signedHead = {
  id: idSchema,
  seq: z.number().int().positive(),
  at: timeSchema,
  /** Who signs it. */
  by: z.string().min(1).max(200),
  /** Why, where it is a correction or a decision. */
  why: z.string().min(1).max(2000).exactOptional(),
};

/** The schema of one kind of event. */
export function kindOf<H extends z.ZodRawShape, K extends string, P extends z.ZodType>(head: H, name: K, payload: P) {
  return z.strictObject({ schema: z.literal(SCHEMA_VERSION), ...head, kind: z.literal(name), payload });
}

interface KindSchema {
  readonly shape: { readonly kind: z.ZodLiteral<string> };
}

/** The names of these kinds. */
export const kindsIn = (schemas: readonly KindSchema[]): ReadonlySet<string> =>
  new Set(schemas.map(({ shape }) => shape.kind.value));

const foreignSchema = z.looseObject({
  schema: z.number().int().positive(),
  id: signedHead.id,
  caseId: idSchema,
  seq: signedHead.seq,
  at: z.string(),
  by: z.string(),
  kind: z.string().min(1),
  payload: z.unknown(),
});

/** An event written by a newer version: kept word for word, not understood. */
export type ForeignEvent = Frozen<z.output<typeof foreignSchema>>;

/** The value, its defaults filled in. Throws InputError with the JSON path. */
export function checked<S extends z.ZodType>(schema: S, value: unknown): z.output<S> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw asInputError(result.error);
}

/** Reads events of these kinds; one from a newer version comes back as a ForeignEvent. It throws InputError for anything else. */
export function reader<S extends z.ZodType>(schema: S, kinds: ReadonlySet<string>) {
  return (json: unknown): z.output<S> | ForeignEvent => {
    const known = schema.safeParse(json);
    if (known.success) return known.data;
    const foreign = foreignSchema.safeParse(json);
    const isNewer = foreign.success && (foreign.data.schema > SCHEMA_VERSION || !kinds.has(foreign.data.kind));
    if (isNewer) return foreign.data;
    throw asInputError(known.error);
  };
}

function asInputError(error: z.ZodError): InputError {
  const issue = error.issues[0];
  return new InputError(
    issue?.message ?? 'this is not an event',
    issue?.path.join('.') ?? '',
    'correct it and send it again',
  );
}
