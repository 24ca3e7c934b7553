/** A dose becomes one that may be drawn up only here: every stop answered, a second person named where one is asked. */
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import type { Frozen } from '../frozen.ts';
import { type DoseLine, doseLineSchema } from './dose-line.ts';
import type { DoseContext } from './given.ts';
import { judgeDose } from './judge.ts';
import { NEEDS } from './remark.ts';
import { type Worked, workOut } from './work-out.ts';

const words = z.string().max(2000);

const answeredSchema = z
  .strictObject({
    code: z.string().min(1).max(60),
    words,
    needs: z.enum(NEEDS).exclude(['change']),
    /** What the vet wrote; null where nothing was asked. */
    reason: words.min(1).nullable(),
  })
  .refine(({ needs, reason }) => needs === 'nothing' || reason !== null, {
    message: 'a stop was not answered',
    path: ['reason'],
  });

/** What a signature holds fast: the line, its arithmetic and every remark with its answer, as they stood. */
export const signedDoseSchema = z
  .strictObject({
    line: doseLineSchema,
    unit: z.enum(['mg', 'U']),
    amount: z.number().positive(),
    perMl: z.number().positive(),
    exactMl: z.number().positive(),
    drawnMl: z.number().positive(),
    drawnAmount: z.number().positive(),
    changePercent: z.number(),
    recipe: z
      .strictObject({
        drugMl: z.number().positive(),
        diluentMl: z.number().positive(),
        totalMl: z.number().positive(),
        perMl: z.number().positive(),
      })
      .nullable(),
    remarks: z.array(answeredSchema),
    /** Who looked at it besides the vet; null where nobody was asked to. */
    secondPerson: z.string().min(1).max(200).nullable(),
  })
  .refine(
    ({ remarks, secondPerson }) => secondPerson !== null || !remarks.some(({ needs }) => needs === 'second person'),
    {
      message: 'a second person was not named',
      path: ['secondPerson'],
    },
  )
  .refine(followsFromLine, { message: 'the volume does not follow from the line', path: ['drawnMl'] });

const ABOUT = 1e-6;

/** Whether its figures are those of its own line: no signature stands over another volume. */
function followsFromLine(signed: Pick<Worked, 'drawnMl' | 'exactMl' | 'perMl'> & { readonly line: DoseLine }): boolean {
  try {
    const worked = workOut(signed.line);
    const isSame = (a: number, b: number) => Math.abs(a - b) <= ABOUT * Math.max(a, b);
    return (['drawnMl', 'exactMl', 'perMl'] as const).every((key) => isSame(worked[key], signed[key]));
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

export type SignedDose = Frozen<z.output<typeof signedDoseSchema>>;

export interface Answers {
  /** Who signs. */
  readonly by: string;
  /** Reasons by the remark's code. */
  readonly reasons: Readonly<Record<string, string>>;
  readonly secondPerson: string | null;
}

/** The dose as signed. Throws InputError, naming the stop, where one is not answered. */
export function signDose(line: DoseLine, context: DoseContext, answers: Answers): SignedDose {
  const { worked, remarks } = judgeDose(line, context);
  const signer = answers.by.trim();
  const second = answers.secondPerson?.trim() || null;
  if (!signer) throw new InputError('nobody signs', 'by', 'write your name');
  const answered = remarks.map(({ code, words: said, needs }) => {
    const reason = answers.reasons[code]?.trim() || null;
    if (needs === 'change') throw new InputError(said, code, 'change the dose line; this cannot be signed');
    if (needs !== 'nothing' && reason === null) throw new InputError(said, code, 'say why');
    return { code, words: said, needs, reason: needs === 'nothing' ? null : reason };
  });
  const needsSecond = answered.some(({ needs }) => needs === 'second person');
  if (needsSecond && (second === null || isSameName(second, signer)))
    throw new InputError('a second person looks at this dose', 'secondPerson', 'name somebody other than the signer');
  const { unit, amount, perMl, exactMl, drawnMl, drawnAmount, changePercent, recipe } = worked;
  const figures = { unit, amount, perMl, exactMl, drawnMl, drawnAmount, changePercent, recipe };
  return { line, ...figures, remarks: answered, secondPerson: needsSecond ? second : null };
}

const isSameName = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
