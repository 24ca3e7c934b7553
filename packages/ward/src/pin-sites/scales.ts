/**
 * Scales for the skin round a pin. Only those whose grades were read in a source can be chosen freely; one known from memory
 * says so and is never the default. Twelve systems are in use and none is agreed (Iliadis et al. 2022).
 */
import type { Status } from '@bonewright/evidence';

export interface PinSiteGrade {
  readonly grade: string;
  /** Empty where the wording was not read. */
  readonly means: string;
  /** A vet is told of it on the same day. */
  readonly tellsVet: boolean;
}

export interface PinSiteScale {
  readonly id: string;
  readonly name: string;
  readonly grades: readonly PinSiteGrade[];
  /** How it was made, how far it can be trusted. */
  readonly says: string;
  readonly source: string;
  readonly status: Status;
}

const grade = (word: string, means: string, tellsVet = false): PinSiteGrade => ({ grade: word, means, tellsVet });

const PLAIN: PinSiteScale = {
  id: 'plain-words',
  name: 'plain words',
  grades: [
    grade('dry', 'dry, skin lies flat'),
    grade('crust', 'a crust, nothing comes out'),
    grade('wet', 'something comes out: say what colour and how much', true),
    grade('swollen', 'swollen, red, warm or sore', true),
  ],
  says: 'No scale: what is seen. In the first days a little thin, reddish fluid without soreness is expected.',
  source: 'common practice, no source; early drainage: Veterinary Medicine, care of external fixators in dogs and cats',
  status: 'common practice',
};

export const PIN_SITE_SCALES: readonly [PinSiteScale, ...PinSiteScale[]] = [
  PLAIN,
  {
    id: 'good-bad-ugly',
    name: 'Good, Bad, Ugly',
    grades: [grade('good', ''), grade('bad', '', true), grade('ugly', '', true)],
    says: 'Three points made of redness, pain and discharge; two people agreed excellently on 218 human sites. The wording of each point was not read here: look it up.',
    source: 'Clint et al. 2010',
    status: 'seen',
  },
  {
    id: 'calm-irritated-infected',
    name: 'calm, irritated, infected',
    grades: [grade('calm', ''), grade('irritated', ''), grade('infected', '', true)],
    says: 'From what patients and clinicians both see, in people. The list of signs was not read here: look it up.',
    source: 'Santy-Tomlinson',
    status: 'seen',
  },
  {
    id: 'modified-gordon',
    name: 'Modified Gordon, good or bad',
    grades: [grade('good', 'grades 0 to 2'), grade('bad', 'grades 3 and 4', true)],
    says: 'Made for photographs. Two raters agree only moderately (kappa 0.48), one with himself somewhat better (0.63): a photograph does not replace a look.',
    source: 'reliability of the Modified Gordon, PMC11475116',
    status: 'seen',
  },
  {
    id: 'checketts-otterburn',
    name: 'Checketts-Otterburn (from memory, unverified)',
    grades: [
      grade('1', 'slight redness, little discharge'),
      grade('2', 'red, discharge, tender', true),
      grade('3', 'as 2, does not settle', true),
      grade('4', 'severe, several pins, loosening', true),
      grade('5', 'as 4, with the bone on the film', true),
      grade('6', 'a sinus or sequestrum after removal', true),
    ],
    says: 'The wording is from memory and nobody has looked it up: check it before you go by it.',
    source: 'from memory',
    status: 'memory',
  },
];

/** The scale of that id; plain words where none was chosen or it is not known. */
export const pinSiteScale = (id: string | null): PinSiteScale => PIN_SITE_SCALES.find((one) => one.id === id) ?? PLAIN;

/** Whether a vet is told of that grade on the same day. */
export const tellsVet = (scaleId: string, word: string): boolean =>
  pinSiteScale(scaleId).grades.some((one) => one.grade === word && one.tellsVet);
