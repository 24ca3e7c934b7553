/** What the practice keeps about medicines: the ranges its vets chose and signed, and the controlled-drug register, whose entries are never changed. */
import { type FormularyChoice, formularyChoiceSchema, registerEntrySchema, type SignedEntry } from '@bonewright/ward';
import { z } from 'zod';
import type { Signed } from '../../case-state.ts';
import { kindsIn } from '../../event-shape.ts';
import type { Frozen } from '../../frozen.ts';
import { idSchema } from '../../payloads.ts';
import { signed } from '../../signed.ts';
import type { Refusal } from '../refusal.ts';
import { practiceKind } from './practice-kind.ts';

export const medicineKinds = [
  practiceKind('formulary-chosen', formularyChoiceSchema),
  practiceKind('formulary-withdrawn', z.strictObject({ choiceId: idSchema, because: z.string().min(1).max(200) })),
  practiceKind('controlled-drug-entered', registerEntrySchema),
] as const;

export type MedicineEvent = Frozen<z.output<(typeof medicineKinds)[number]>>;

export interface Medicines {
  /** Ranges that stand, in the order in which they were first signed. */
  readonly formulary: readonly Signed<FormularyChoice>[];
  readonly register: readonly SignedEntry[];
}

export const emptyMedicines: Medicines = { formulary: [], register: [] };

const KINDS = kindsIn(medicineKinds);

export const isOfMedicines = (event: { readonly kind: string }): event is MedicineEvent => KINDS.has(event.kind);

/** The medicines after that event, or why it says nothing. */
export function applyMedicines(medicines: Medicines, event: MedicineEvent): Medicines | Refusal {
  const { formulary, register } = medicines;
  switch (event.kind) {
    case 'formulary-chosen': {
      const isSame = ({ value }: Signed<FormularyChoice>) => value.choiceId === event.payload.choiceId;
      const choice = signed(event, event.payload);
      const isKnown = formulary.some(isSame);
      const after = isKnown ? formulary.map((one) => (isSame(one) ? choice : one)) : [...formulary, choice];
      return { ...medicines, formulary: after };
    }
    case 'formulary-withdrawn': {
      const left = formulary.filter(({ value }) => value.choiceId !== event.payload.choiceId);
      if (left.length === formulary.length) return { because: 'there is no such choice in the formulary' };
      return { ...medicines, formulary: left };
    }
    case 'controlled-drug-entered': {
      const { entryId } = event.payload;
      if (register.some(({ entry }) => entry.entryId === entryId))
        return { because: 'the register has this entry already; a correction is an entry of its own' };
      return { ...medicines, register: [...register, { entry: event.payload, by: event.by, at: event.at }] };
    }
  }
}

export function medicineSentence(event: MedicineEvent): string {
  switch (event.kind) {
    case 'formulary-chosen': {
      const { drug, species, route, low, high, unit, reason } = event.payload;
      const why = reason === '' ? '' : ` Because: ${reason}`;
      return `Formulary: ${drug} ${low === high ? low : `${low}-${high}`} ${unit}/kg ${route} for a ${species}.${why}`;
    }
    case 'formulary-withdrawn':
      return `A choice of the formulary withdrawn: ${event.payload.because}.`;
    case 'controlled-drug-entered': {
      const { kind, drug, ml, party } = event.payload;
      return `Register: ${drug} ${kind}, ${ml} ml${party ? `, ${party}` : ''}.`;
    }
  }
}
