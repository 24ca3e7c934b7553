/** What is looked at before a wild animal goes back: one list for each kind of animal, every line "not looked" until somebody says so. */
import type { Status } from '@bonewright/evidence';
import { isBird, speciesName } from '../doses/patient-kind.ts';

export interface ReadyItem {
  /** As the record names it. */
  readonly id: string;
  readonly asks: string;
  /** Why it matters, or what is easily missed. */
  readonly why: string;
  readonly source: string;
  readonly status: Status;
}

const PRACTICE = { source: 'common practice, no source', status: 'common practice' as const };
const item = (
  id: string,
  asks: string,
  why: string,
  from: Pick<ReadyItem, 'source' | 'status'> = PRACTICE,
): ReadyItem => ({
  id,
  asks,
  why,
  ...from,
});
const seenIn = (source: string) => ({ source, status: 'seen' as const });

const MOVES = {
  hedgehog: item(
    'curls-fully',
    'Curls up tightly, spines all round',
    'A healed leg that stays outside the ball is found first.',
  ),
  bird: item('flies', 'Flies: level, climbing, turning, landing, for minutes', 'A perch-to-perch hop is no flight.'),
  other: item(
    'moves-as-its-kind',
    'Runs, climbs and jumps as its kind does',
    'In the open, over height, not in the cage.',
  ),
};

const FOOD = {
  bird: item(
    'natural-food',
    'Takes natural food; what hunts has caught live prey',
    'In one study of barn owls many were lost in the first four weeks; training with live prey did better.',
    seenIn('Fajardo et al. 2000, Biol Conserv 94:287'),
  ),
  other: item('natural-food', 'Takes natural food, found by itself', 'Food from a bowl teaches nothing.'),
};

/** The list for that species, in the order in which it is asked. */
export function readinessFor(species: string): readonly ReadyItem[] {
  const isOfAir = isBird(species);
  const moves = isOfAir ? MOVES.bird : speciesName(species) === 'hedgehog' ? MOVES.hedgehog : MOVES.other;
  return [
    item(
      'weight-and-condition',
      'Weight and condition right for the season',
      'Against the limit chosen below, and by hand.',
    ),
    moves,
    item('bears-weight-both-sides', 'Bears weight on both sides alike', 'Standing still and at speed.'),
    item(
      'grooms-both-sides',
      isOfAir ? 'Preens both sides' : 'Grooms and scratches both sides',
      'A side it cannot reach keeps its parasites.',
    ),
    item(
      'filmed',
      isOfAir ? 'Flight filmed and looked at slowly' : 'Gait filmed and looked at slowly',
      'The eye misses a short step.',
    ),
    isOfAir ? FOOD.bird : FOOD.other,
    item(
      'drugs-out',
      'Off all drugs, withdrawal times over',
      'A rabbit, pigeon or game bird may be eaten by somebody.',
    ),
    item(
      'implants-out',
      'Every implant out, counted against the record',
      'All orthopaedic implants come out before release.',
      seenIn('Forshaw, Care and treatment of sick and injured hedgehogs, British Hedgehog Preservation Society'),
    ),
    item('parasites', 'Parasites looked for and treated', 'Then the drugs for that are out as well.'),
    item(
      'site-safe',
      'Site known and safe: where it was found, or as near as is safe',
      'Others of its kind live there; no main road, no active badger sett beside it.',
      seenIn('Foote 2022, Vet Nursing J 37, p. 30; Yarnell et al. 2019'),
    ),
    item('forecast-seen', 'Forecast seen for the first nights', 'Typed below; nothing is looked up here.'),
    item('young-asked', 'Milk, dependent young or a nest asked about', 'See the season below.'),
  ];
}
