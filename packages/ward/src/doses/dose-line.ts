/** A dose as a hand writes it: what, for whom, how much a kilogram, from which vial, in which syringe. Nothing in it is chosen for the vet. */
import { DOSE_ROUTES, DOSE_USES } from '@bonewright/evidence';
import { z } from 'zod';

const words = z.string().max(200);
const positive = z.number().positive().finite();
const moment = z.iso.datetime('a time is written like 2026-11-25T23:10:00Z');

export const DOSE_UNITS = ['mg/kg', 'µg/kg', 'U/kg'] as const;
export const STRENGTH_UNITS = ['mg/ml', 'µg/ml', 'U/ml'] as const;

export const doseLineSchema = z.strictObject({
  /** The drug's id in the evidence, or its generic name where it is not there. */
  drug: words.min(1),
  use: z.enum(DOSE_USES),
  route: z.enum(DOSE_ROUTES),
  /** Where on the body; empty where it does not matter. */
  site: words,
  /** The patient's species as the record has it. */
  species: words.min(1),
  massG: positive,
  /** When it was weighed; null where nobody wrote it down. */
  weighedAt: moment.nullable(),
  dose: z.strictObject({ value: positive, unit: z.enum(DOSE_UNITS) }),
  /** The published figure it was taken from; null where it was typed. */
  figureId: words.nullable(),
  /** As read from the vial. */
  strength: z.strictObject({ value: positive, unit: z.enum(STRENGTH_UNITS) }),
  /** One part of the drug in so many parts altogether; null where it is drawn as it comes. */
  dilution: z.strictObject({ parts: z.number().int().min(2).max(1000), diluent: words.min(1) }).nullable(),
  syringe: z.strictObject({ capacityMl: positive, markMl: positive }),
});

export type DoseLine = Readonly<z.output<typeof doseLineSchema>>;
