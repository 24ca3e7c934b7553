/** An antagonist from the amount that was given, and when equal volumes do that of themselves. */
import { type Entry, entry, value } from '@bonewright/evidence';
import type { EarlierDose } from './given.ts';

export interface Reversal {
  readonly of: EarlierDose;
  readonly antagonist: 'atipamezole';
  /** mg of antagonist for each mg given, as published. */
  readonly ratio: Entry;
  readonly amountMg: number;
  /** The same for this patient, mg/kg. */
  readonly perKg: number;
}

const REVERSED: Readonly<Record<string, string>> = {
  medetomidine: 'dose.reversal.medetomidine',
  dexmedetomidine: 'dose.reversal.dexmedetomidine',
};
const GRAMS_A_KILOGRAM = 1000;

/** What the published ratios make of each alpha-2 agonist that was given; shown to the vet, signed like any dose. */
export function reversalsOf(doses: readonly EarlierDose[], massG: number): Reversal[] {
  return doses.flatMap((of) => {
    const id = REVERSED[of.drug];
    if (id === undefined) return [];
    const ratio = entry(id);
    const amountMg = of.amount * ratio.value;
    return [{ of, antagonist: 'atipamezole' as const, ratio, amountMg, perKg: amountMg / (massG / GRAMS_A_KILOGRAM) }];
  });
}

interface Drawn {
  /** As it was in the syringe, mg/ml. */
  readonly perMl: number;
  readonly isDiluted: boolean;
}

const SAME = 0.01;

/** Whether the volume of the antagonist equals the volume of the agonist: only undiluted, and only at the strengths it was published for. */
export function doEqualVolumesReverse(
  agonist: 'medetomidine' | 'dexmedetomidine',
  given: Drawn,
  antagonist: Drawn,
): boolean {
  const isAt = ({ perMl, isDiluted }: Drawn, id: string) => !isDiluted && Math.abs(perMl / value(id) - 1) <= SAME;
  return isAt(given, `dose.equal-volume.${agonist}`) && isAt(antagonist, 'dose.equal-volume.atipamezole');
}
