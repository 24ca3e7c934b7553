/** An entry of the controlled-drug register. Entries are never changed: a correction is an entry of its own. */
import { z } from 'zod';

const words = z.string().max(200);
const id = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/);

export const REGISTER_KINDS = ['received', 'given', 'wasted', 'destroyed', 'counted', 'corrected'] as const;
export type RegisterKind = (typeof REGISTER_KINDS)[number];

export const registerEntrySchema = z
  .strictObject({
    entryId: id,
    kind: z.enum(REGISTER_KINDS),
    drug: words.min(1),
    perMl: z.number().positive(),
    unit: z.enum(['mg', 'U']),
    /** Injection, ampoule, tablets: with drug and strength it makes a page. */
    form: words.min(1),
    /** When it happened. */
    at: z.iso.datetime('a time is written like 2026-11-25T23:10:00Z'),
    /** ml; of a count what was found, of a correction what it adds or takes away. */
    ml: z.number(),
    /** The entry that a correction is about; null in every other. */
    corrects: id.nullable(),
    /** From whom it came, or the patient it went to. */
    party: words,
    /** The case it went to; null where it went to none. */
    caseId: id.nullable(),
    witness: words.min(1).nullable(),
    /** Batch, requisition, why nobody witnessed it, what was wrong. */
    note: z.string().max(2000),
  })
  .refine(({ kind, ml }) => kind === 'corrected' || ml >= 0, { message: 'an amount is not negative', path: ['ml'] })
  .refine(({ kind, corrects }) => (kind === 'corrected') === (corrects !== null), {
    message: 'a correction, and nothing else, names the entry it is about',
    path: ['corrects'],
  })
  .refine(({ kind, note }) => kind !== 'corrected' || note.trim() !== '', {
    message: 'a correction says what was wrong',
    path: ['note'],
  })
  .refine(({ kind, witness, note }) => kind === 'received' || witness !== null || note.trim() !== '', {
    message: 'without a witness the entry says why',
    path: ['note'],
  });

export type RegisterEntry = Readonly<z.output<typeof registerEntrySchema>>;

/** An entry as somebody signed it. */
export interface SignedEntry {
  readonly entry: RegisterEntry;
  readonly by: string;
  /** When it was written down. */
  readonly at: string;
}
