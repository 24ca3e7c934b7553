/** Doses of a case: proposed by anybody of the ward, signed by a vet, given, or voided. What was not signed is never given here. */
import { type DoseLine, doseLineSchema, type EarlierDose, type SignedDose, signedDoseSchema } from '@bonewright/ward';
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import type { Frozen } from '../frozen.ts';
import { idSchema, timeSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

const dose = { doseId: idSchema };

export const doseProposed = z.strictObject({ ...dose, line: doseLineSchema });
export const doseSigned = z.strictObject({ ...dose, signature: signedDoseSchema });
export const doseGiven = z.strictObject({
  ...dose,
  /** When it went in. */
  at: timeSchema,
  /** Batch, how the patient took it; empty where there is nothing to say. */
  note: z.string().max(200),
});
export const doseVoided = z.strictObject({ ...dose, because: z.string().min(1).max(200) });

export type DoseGiven = Frozen<z.output<typeof doseGiven>>;
export type DoseEvent = EventOf<'dose-proposed' | 'dose-signed' | 'dose-given' | 'dose-voided'>;

export interface DoseInCase {
  readonly doseId: string;
  /** As last written by hand; the signed line once it is signed. */
  readonly line: DoseLine;
  readonly signed: Signed<SignedDose> | null;
  readonly given: Signed<DoseGiven> | null;
  readonly voided: Signed<string> | null;
}

export const isOfDoses = (event: { readonly kind: string }): event is DoseEvent => event.kind.startsWith('dose-');

/** The doses after one more event, or why it says nothing. */
export function applyDose(doses: readonly DoseInCase[], event: DoseEvent): readonly DoseInCase[] | string {
  const before = doses.find(({ doseId }) => doseId === event.payload.doseId);
  const after = changed(before, event);
  if (typeof after === 'string') return after;
  return before ? doses.map((one) => (one === before ? after : one)) : [...doses, after];
}

function changed(before: DoseInCase | undefined, event: DoseEvent): DoseInCase | string {
  if (before?.voided) return 'the dose was voided';
  if (before?.given && event.kind !== 'dose-voided') return 'the dose was given already';
  switch (event.kind) {
    case 'dose-proposed': {
      const { doseId, line } = event.payload;
      return { doseId, line, signed: null, given: null, voided: null };
    }
    case 'dose-signed': {
      const { doseId, signature } = event.payload;
      return { doseId, line: signature.line, signed: signed(event, signature), given: null, voided: null };
    }
    case 'dose-given':
      if (!before?.signed) return 'no vet signed the dose';
      return { ...before, given: signed(event, event.payload) };
    case 'dose-voided':
      return before ? { ...before, voided: signed(event, event.payload.because) } : 'there is no such dose';
  }
}

/** What a further dose is judged against: everything signed that was not voided. */
export const earlierDoses = (doses: readonly DoseInCase[]): EarlierDose[] =>
  doses.flatMap(({ doseId, line, signed: signature, given, voided }) => {
    if (!signature || voided) return [];
    const { drug, route, site } = line;
    return [{ doseId, drug, route, site, amount: signature.value.drawnAmount, givenAt: given?.value.at ?? null }];
  });

export function doseSentence(event: DoseEvent): string {
  switch (event.kind) {
    case 'dose-proposed':
      return `Dose written down, not signed: ${lineWords(event.payload.line)}.`;
    case 'dose-signed': {
      const { line, drawnMl, remarks, secondPerson } = event.payload.signature;
      const reasons = remarks.flatMap(({ words, reason }) => (reason === null ? [] : [`${words} Because: ${reason}.`]));
      const second = secondPerson === null ? [] : [`Seen by ${secondPerson} as well.`];
      return [`Dose signed: ${lineWords(line)}, ${drawnMl} ml.`, ...reasons, ...second].join(' ');
    }
    case 'dose-given':
      return `Dose given.${event.payload.note ? ` ${event.payload.note}` : ''}`;
    case 'dose-voided':
      return `Dose voided: ${event.payload.because}.`;
  }
}

const lineWords = ({ drug, dose: { value, unit }, route, massG }: DoseLine): string =>
  `${drug} ${value} ${unit} ${route} for ${massG} g`;
