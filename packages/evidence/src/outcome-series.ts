/** Published series of mended fractures, to lay beside a case. They say what happened to others, never what will happen here. */
import type { Source, Status } from './entry.ts';

export interface OutcomeSeries {
  readonly id: string;
  /** The animals of the series, in its words. */
  readonly animals: string;
  /** Species of patients that it is about; empty where it is about a whole group. */
  readonly species: readonly string[];
  readonly group: 'birds' | 'mammals' | 'any';
  /** Bones it is about; empty for any. */
  readonly bones: readonly string[];
  readonly treatment: string;
  /** Animals in the series; null where the page read does not say. */
  readonly n: number | null;
  /** What became of them, one fact a line. */
  readonly outcomes: readonly string[];
  readonly source: Source;
  readonly status: Status;
  /** What else to bear in mind. */
  readonly note?: string;
}

const seen = 'seen' as const;

export const outcomeSeries: readonly OutcomeSeries[] = Object.freeze<OutcomeSeries[]>([
  {
    id: 'outcome.raptor.tibiotarsus.tie-in',
    animals: 'raptors',
    species: ['tawny owl', 'barn owl', 'buzzard', 'kestrel', 'sparrowhawk', 'little owl'],
    group: 'birds',
    bones: ['tibiotarsus'],
    treatment: 'IM pin tied into an external fixator',
    n: 37,
    outcomes: ['31 of 37 fractures healed, in 38 days on average (15 to 70)', '20 of 34 birds were released'],
    source: { title: 'Bueno, Redig and Rendahl, J Am Vet Med Assoc 247:1154', year: 2015 },
    status: seen,
    note: 'healed is not released: other injuries cost the rest',
  },
  {
    id: 'outcome.falcon.tibiotarsus.tie-in',
    animals: 'falcons',
    species: ['kestrel', 'peregrine falcon'],
    group: 'birds',
    bones: ['tibiotarsus'],
    treatment: 'IM pin tied into an external fixator',
    n: 5,
    outcomes: ['callus at 7 to 14 days, healed at 28 to 40', 'standing 30 to 60 minutes after the operation'],
    source: { title: 'Muller and Nafeez, tie-in fixator in falcons' },
    status: seen,
  },
  {
    id: 'outcome.bird.fixator',
    animals: 'birds',
    species: [],
    group: 'birds',
    bones: [],
    treatment: 'external fixator',
    n: 28,
    outcomes: ['all but 3 healed'],
    source: { title: 'Hatt, Christen and Sandmeier, Vet Rec 160:188', year: 2007 },
    status: seen,
  },
  {
    id: 'outcome.raptor.humerus',
    animals: 'raptors',
    species: ['tawny owl', 'barn owl', 'buzzard', 'kestrel', 'sparrowhawk', 'little owl'],
    group: 'birds',
    bones: ['humerus'],
    treatment: 'treated, without other disease',
    n: 461,
    outcomes: ['59 of the 150 treated were released', 'closed and open alike, after triage'],
    source: { title: 'humeral fractures in raptors, J Avian Med Surg 36:2', year: 2022 },
    status: seen,
  },
  {
    id: 'outcome.raptor.antebrachium',
    animals: 'raptors',
    species: ['tawny owl', 'barn owl', 'buzzard', 'kestrel', 'sparrowhawk', 'little owl'],
    group: 'birds',
    bones: ['radius', 'ulna'],
    treatment: 'treated by various means',
    n: 620,
    outcomes: [
      '245 of the 519 treated were released',
      'closed did better; both bones at one level worse, proximal worst',
    ],
    source: { title: 'antebrachial fractures in 620 birds of prey, abstract' },
    status: seen,
  },
  {
    id: 'outcome.rabbit.long-bones',
    animals: 'rabbits, 89 long bones in external fixators',
    species: ['rabbit'],
    group: 'mammals',
    bones: [],
    treatment: 'external fixator and others',
    n: 139,
    outcomes: [
      'closed tibia 26 of 26, open tibia 14 of 18, femur 19 of 26, humerus 4 of 6, radius 23 of 24',
      'feet 23 of 23, in 28 days (20 to 45)',
      '109 of 123 overall',
    ],
    source: { title: 'Sasai et al., J Am Vet Med Assoc 252:457', year: 2018 },
    status: seen,
  },
  {
    id: 'outcome.rabbit.pets',
    animals: 'pet rabbits',
    species: ['rabbit'],
    group: 'mammals',
    bones: [],
    treatment: 'operation or none',
    n: 28,
    outcomes: ['24 of 28 recovered', 'complications in 9 of the 22 operated'],
    source: { title: 'Garcia-Pertierra et al., J Small Anim Pract 61:46', year: 2020 },
    status: seen,
    note: 'a digest of it quotes good use of the limb in 73 % after the first repair',
  },
  {
    id: 'outcome.hedgehog.admissions',
    animals: 'hedgehogs admitted to one charity, 2005 to 2017, all causes',
    species: ['hedgehog'],
    group: 'mammals',
    bones: [],
    treatment: 'any',
    n: 19_577,
    outcomes: [
      '22 % dead or put to sleep within 48 hours',
      'alive in care: 78 % at 2 days, 62 % at 20 days, 53 % at 80',
    ],
    source: { title: 'Burroughes, Dowler and Burroughes, admission and survival trends in hedgehogs', year: 2021 },
    status: seen,
    note: 'no series of mended limbs of hedgehogs or squirrels was found',
  },
  {
    id: 'outcome.casualties.all',
    animals: 'all casualties of one British centre',
    species: [],
    group: 'any',
    bones: [],
    treatment: 'any',
    n: 42_841,
    outcomes: ['42.6 % released, 19.2 % died, 37.2 % put to sleep', 'the injured do worse than the orphaned'],
    source: { title: 'Mullineaux and Pawson, Animals 14:86', year: 2023 },
    status: seen,
  },
]);
