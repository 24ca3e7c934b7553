/** Doses and strengths in the unit of their drug: mg, or U for a drug that is measured in units. Micrograms become milligrams here and nowhere else. */
import { drugOf } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import type { DoseLine } from './dose-line.ts';

const MICROGRAMS_A_MILLIGRAM = 1000;

export type AmountUnit = 'mg' | 'U';

/** The unit the line counts in. Throws InputError where dose, strength and drug do not speak of the same thing. */
export function amountUnit({ drug, dose, strength }: Pick<DoseLine, 'drug' | 'dose' | 'strength'>): AmountUnit {
  const [ofDose, ofStrength] = [unitOf(dose.unit), unitOf(strength.unit)];
  if (ofDose !== ofStrength)
    throw new InputError(
      `the dose is in ${dose.unit} and the strength in ${strength.unit}`,
      'strength.unit',
      'write both by mass or both in units',
    );
  const known = drugOf(drug)?.unit;
  if (known && known !== ofDose)
    throw new InputError(`${drug} is measured in ${known}, not in ${ofDose}`, 'dose.unit', 'read the vial again');
  return ofDose;
}

const unitOf = (unit: string): AmountUnit => (unit.startsWith('U') ? 'U' : 'mg');

/** mg/kg, or U/kg. */
export const dosePerKg = ({ value, unit }: DoseLine['dose']): number => inMilligrams(value, unit);

/** mg/ml, or U/ml. */
export const strengthPerMl = ({ value, unit }: DoseLine['strength']): number => inMilligrams(value, unit);

const inMilligrams = (value: number, unit: string): number =>
  unit.startsWith('µg') ? value / MICROGRAMS_A_MILLIGRAM : value;
