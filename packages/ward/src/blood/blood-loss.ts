/** Blood lost, as a share of what the patient has. */
import { entry, value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import { isBird, speciesName } from '../doses/patient-kind.ts';

const GRAMS_PER_KG = 1000;

/** Whose blood volume is borrowed. */
export type BloodGroup = 'mammal' | 'rabbit' | 'bird';

/** Whose figure stands for a species; a squirrel's or a hedgehog's own was not found. */
export const bloodGroupOf = (species: string): BloodGroup =>
  isBird(species) ? 'bird' : speciesName(species) === 'rabbit' ? 'rabbit' : 'mammal';

export interface BloodVolume {
  /** The end that is reckoned with: a loss then looks no smaller than it is. */
  readonly lowMl: number;
  readonly highMl: number;
  /** The entry of the registry that it comes from. */
  readonly evidence: string;
}

/** Estimated blood volume of a patient of `massG`, ml. Throws InputError where it has no mass. */
export function bloodVolume(group: BloodGroup, massG: number): BloodVolume {
  if (!(massG > 0)) throw new InputError('the patient has no mass', 'massG', 'weigh it, in grams');
  const evidence = `blood.volume.${group}`;
  const { low, high } = entry(evidence);
  const kg = massG / GRAMS_PER_KG;
  return { lowMl: low * kg, highMl: high * kg, evidence };
}

export const BLOOD_BANDS = ['within', 'alert', 'stop-and-think', 'critical', 'shock'] as const;
export type BloodBand = (typeof BLOOD_BANDS)[number];

export interface BloodLoss {
  /** Of the low estimate of the volume. */
  readonly percent: number;
  readonly band: BloodBand;
}

/** How grave a loss of `lostMl` is. Bands are borrowed from guides on taking samples from healthy animals. */
export function bloodLoss(lostMl: number, volume: BloodVolume): BloodLoss {
  const percent = (100 * lostMl) / volume.lowMl;
  const band = BLOOD_BANDS.filter((name) => name === 'within' || percent >= value(`blood.loss.${name}`)).at(-1);
  return { percent, band: band ?? 'within' };
}

/** Blood in swabs, from what they gained: grams wet less grams dry. Throws InputError where they weigh less than dry. */
export function swabsMl(wetG: number, dryG: number): number {
  if (!(wetG >= dryG && dryG >= 0))
    throw new InputError(`the swabs weigh ${wetG} g wet and ${dryG} g dry`, 'wetG', 'weigh as many dry ones');
  return (wetG - dryG) * value('blood.swab.density');
}
