/** The practice's formulary: a range that one of its vets chose for a species, drug, route and use, and signed. */
import { DOSE_ROUTES, DOSE_USES } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import type { Frozen } from '../frozen.ts';
import { rangeRemarks } from './checks/range.ts';
import { NEEDS, type Remark } from './remark.ts';

const words = z.string().max(200);

export const formularyChoiceSchema = z
  .strictObject({
    choiceId: z.string().regex(/^[A-Za-z0-9_-]{8,64}$/),
    drug: words.min(1),
    species: words.min(1),
    route: z.enum(DOSE_ROUTES),
    use: z.enum(DOSE_USES),
    /** mg/kg, or U/kg for a drug measured in units. */
    low: z.number().positive(),
    high: z.number().positive(),
    unit: z.enum(['mg', 'U']),
    /** Hours between doses; null where none was chosen. */
    everyHours: z.number().positive().nullable(),
    /** The published figures that stood beside it when it was signed. */
    figureIds: z.array(words).max(50),
    /** Why, where a figure stopped it; empty otherwise. */
    reason: z.string().max(2000),
  })
  .refine(({ low, high }) => low <= high, { message: 'the range runs backwards', path: ['high'] });

export type FormularyChoice = Frozen<z.output<typeof formularyChoiceSchema>>;
type ChoiceFacts = Pick<FormularyChoice, 'drug' | 'species' | 'route' | 'low' | 'high' | 'unit'>;

/** What stands against a choice, at either end of its range, each thing once. */
export function choiceRemarks({ drug, species, route, low, high, unit }: ChoiceFacts): Remark[] {
  const found = [low, high].flatMap((perKg) => rangeRemarks({ drug, species, route, figureId: null, perKg, unit }));
  const byCode = new Map(found.map((remark) => [remark.code, remark]));
  return [...byCode.values()].toSorted((a, b) => NEEDS.indexOf(b.needs) - NEEDS.indexOf(a.needs));
}

/** Throws InputError where something stands against the choice and no reason was written. */
export function checkChoice(choice: FormularyChoice): void {
  const stop = choiceRemarks(choice).find(({ needs }) => needs !== 'nothing');
  if (stop && choice.reason.trim() === '') throw new InputError(stop.words, 'reason', 'say why');
}

/** The practice's choice for this patient, if it made one. */
export const chosenFor = (
  choices: readonly FormularyChoice[],
  { drug, species, route }: Pick<FormularyChoice, 'drug' | 'species' | 'route'>,
): FormularyChoice | null =>
  choices.findLast((choice) => choice.drug === drug && choice.species === species && choice.route === route) ?? null;
