/** Words that the admission form offers; species and bone can also be typed. */
import type { Sex, Side } from './case-draft.ts';

export const SPECIES: readonly string[] = [
  'red squirrel',
  'grey squirrel',
  'hedgehog',
  'rabbit',
  'brown hare',
  'tawny owl',
  'barn owl',
  'kestrel',
  'sparrowhawk',
  'wood pigeon',
  'herring gull',
  'stoat',
  'pine marten',
];

export const BONES: readonly string[] = [
  'humerus',
  'radius',
  'ulna',
  'femur',
  'tibia',
  'tibiotarsus',
  'tarsometatarsus',
  'metatarsus',
];

export const AGES = [
  ['juvenile', 'juvenile'],
  ['adult', 'adult'],
  ['aged', 'aged'],
] as const;

export const SEXES: readonly (readonly [Sex, string])[] = [
  ['female', 'female'],
  ['male', 'male'],
  ['unknown', 'unknown'],
];

export const SIDES: readonly (readonly [Side, string])[] = [
  ['left', 'left'],
  ['right', 'right'],
];
