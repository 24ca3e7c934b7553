/** Energy of a day and grams of a feed whose own energy the user typed. */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';

const GRAMS_PER_KG = 1000;

const CONSTANTS = {
  mammal: 'energy.resting.mammal',
  'non-passerine': 'energy.basal.non-passerine',
  passerine: 'energy.basal.passerine',
} as const;

/** Whose formula is used. */
export type EnergyGroup = keyof typeof CONSTANTS;

/** The registry's entry behind the formula of a group. */
export const energyEvidence = (group: EnergyGroup): string => CONSTANTS[group];

/** Resting (mammal) or basal (bird) energy of `massG`, kcal a day: K times kg to the power 0.75. Throws InputError without a mass. */
export function restingKcalPerDay(group: EnergyGroup, massG: number): number {
  if (!(massG > 0)) throw new InputError('the patient has no mass', 'massG', 'weigh it, in grams');
  return value(CONSTANTS[group]) * (massG / GRAMS_PER_KG) ** value('energy.exponent');
}

/** What a patient needs in a day: the resting energy times the factors that somebody chose. */
export const neededKcalPerDay = (group: EnergyGroup, massG: number, factors: readonly number[]): number =>
  factors.reduce((kcal, factor) => kcal * factor, restingKcalPerDay(group, massG));

/** Grams of a feed of so many kcal in 100 g that give `kcalPerDay`. Throws InputError where the feed has no energy. */
export function gramsOfFeed(kcalPerDay: number, kcalPer100G: number): number {
  if (!(kcalPer100G > 0)) throw new InputError('the feed has no energy', 'kcalPer100G', 'read it on the packet');
  return (100 * kcalPerDay) / kcalPer100G;
}
