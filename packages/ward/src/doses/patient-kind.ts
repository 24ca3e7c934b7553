/** Which published figures speak of this patient: its own species, its kind in general, or another animal. */
import { type DoseFigure, type Entry, entries } from '@bonewright/evidence';

export type Relation = 'own' | 'general' | 'other';

const BIRD =
  /owl|kestrel|falcon|hawk|buzzard|kite|eagle|pigeon|dove|gull|duck|swan|goose|crow|rook|jay|magpie|raven|heron|bird|finch|thrush|blackbird|swift|tern|hobby|merlin|harrier|woodpecker|starling|robin|tit\b|wren/i;
const SAME: Readonly<Record<string, string>> = {
  'european hedgehog': 'hedgehog',
  'wild rabbit': 'rabbit',
  'european rabbit': 'rabbit',
  fox: 'red fox',
  'common buzzard': 'buzzard',
  woodpigeon: 'wood pigeon',
};

/** The name the evidence uses for a species as somebody wrote it. */
export function speciesName(species: string): string {
  const plain = species.trim().toLowerCase().replace(/\s+/g, ' ');
  return SAME[plain] ?? plain;
}

export const isBird = (species: string): boolean => BIRD.test(speciesName(species));

export function relationTo(figure: DoseFigure, species: string): Relation {
  if (figure.own.includes(speciesName(species))) return 'own';
  return figure.isGeneral && figure.animals === animalsOf(species) ? 'general' : 'other';
}

export const animalsOf = (species: string): 'birds' | 'mammals' => (isBird(species) ? 'birds' : 'mammals');

/** What grown ones weigh; null where nothing is known. */
export const grownMass = (species: string): Entry | null =>
  entries.find(({ id }) => id === `mass.${speciesName(species).replaceAll(' ', '-')}`) ?? null;
