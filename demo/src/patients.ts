/** Invented patients of the invented Thornbeck Wildlife Rescue, seen at the invented Marl Lane Veterinary Referrals. */
import type { Payload, Stage } from '@bonewright/casebook';

export const SURGEON = 'R. Fenn, surgeon';
export const NURSE = 'T. Okafor, nurse';
export const CARER = 'M. Thorne, Thornbeck Wildlife Rescue';

export type PatientKey = 'squirrel' | 'owl' | 'hedgehog' | 'rabbit';

/** How far a pin went from where it was planned. */
export interface Slip {
  readonly pin: number;
  readonly alongMm?: number;
  /** As in a plan: the outer end towards distal is positive. */
  readonly tiltDeg?: number;
}

/** Films taken at a later visit, and what they show of the callus: 0 none, 1 as dense as bone. */
interface LaterFilms {
  readonly occasion: 'after' | 'recheck';
  readonly callus: number;
  /** As read on the day, cortex by cortex (mRUST); absent where nobody has yet. */
  readonly scores?: Payload<'cortices-scored'>['scores'];
}

export interface DemoPatient {
  readonly key: PatientKey;
  readonly admission: Omit<Payload<'case-opened'>, 'weighedAt' | 'demonstration'> & { readonly massG: number };
  /** How the patient came in, as the rescue tells it. */
  readonly story: string;
  readonly admittedMinutesAgo: number;
  readonly fractureGapMm: number;
  readonly keepOut: { readonly proximalMm: number; readonly distalMm: number };
  /** Directions about the bone from which pins may go in: 0 medial, 90 cranial, 180 lateral. */
  readonly corridorDeg: readonly [number, number];
  /** Depth of soft tissue on the side of the pins, at the proximal and the distal end. */
  readonly softTissueDepthMm: readonly [number, number];
  /** A plan was chosen; otherwise the case stands at its films. */
  readonly isPlanned: boolean;
  /** What was noted after the operation, and how many days after it; nothing where there was none yet. */
  readonly later: readonly {
    readonly days: number;
    readonly stage: Stage;
    readonly text: string;
    readonly films?: LaterFilms;
  }[];
  /** Pins that did not go where they were planned. */
  readonly slips: readonly Slip[];
}

const MINUTES_A_DAY = 1440;

export const patients: readonly DemoPatient[] = [
  {
    key: 'squirrel',
    admission: {
      number: '26-041',
      species: 'red squirrel',
      name: 'Hazel',
      massG: 310,
      ageClass: 'adult',
      sex: 'female',
      bone: 'tibia',
      side: 'left',
    },
    story:
      'Found at the foot of the old pines on the Thornbeck road at dusk, dragging the left hind leg. Closed, skin whole, toes warm and pinched back.',
    admittedMinutesAgo: 70,
    fractureGapMm: 0.5,
    keepOut: { proximalMm: 4, distalMm: 4 },
    corridorDeg: [-35, 40],
    softTissueDepthMm: [4, 1.5],
    isPlanned: true,
    later: [],
    slips: [],
  },
  {
    key: 'owl',
    admission: {
      number: '26-040',
      species: 'tawny owl',
      name: 'Number seven',
      massG: 440,
      ageClass: 'adult',
      sex: 'unknown',
      bone: 'tibiotarsus',
      side: 'right',
    },
    story:
      'Brought in by the driver who hit it on the mill lane. Bright, stands on the left leg, small wound on the inner side.',
    admittedMinutesAgo: 190,
    fractureGapMm: 0.6,
    keepOut: { proximalMm: 6, distalMm: 6 },
    corridorDeg: [-40, 40],
    softTissueDepthMm: [6, 2],
    isPlanned: false,
    later: [],
    slips: [],
  },
  {
    key: 'hedgehog',
    admission: {
      number: '26-036',
      species: 'hedgehog',
      name: 'Burr',
      massG: 820,
      ageClass: 'adult',
      sex: 'male',
      bone: 'femur',
      side: 'left',
    },
    story:
      'Found by day on the cricket green, left hind leg held out straight behind it. Closed, cold, revived in an incubator first.',
    admittedMinutesAgo: 3 * MINUTES_A_DAY,
    fractureGapMm: 0.6,
    keepOut: { proximalMm: 5, distalMm: 5 },
    corridorDeg: [150, 205],
    softTissueDepthMm: [4, 2],
    isPlanned: true,
    later: [
      { days: 0.1, stage: 'recovery', text: 'Awake and in a ball within forty minutes; warm, breathing even.' },
      { days: 1, stage: 'recovery', text: 'Ate in the night. Frame clean and dry, pads warm.' },
    ],
    slips: [
      { pin: 1, alongMm: 0.4 },
      { pin: 3, alongMm: -0.5 },
    ],
  },
  {
    key: 'rabbit',
    admission: {
      number: '26-029',
      species: 'rabbit',
      name: 'Dock',
      massG: 1400,
      ageClass: 'adult',
      sex: 'female',
      bone: 'tibia',
      side: 'right',
    },
    story: 'Taken from a cat by the allotment holders. Closed break of the right tibia, otherwise unhurt.',
    admittedMinutesAgo: 24 * MINUTES_A_DAY,
    fractureGapMm: 0.8,
    keepOut: { proximalMm: 8, distalMm: 8 },
    corridorDeg: [-35, 40],
    softTissueDepthMm: [8, 2],
    isPlanned: true,
    later: [
      {
        days: 0.2,
        stage: 'recovery',
        text: 'Awake, warm, ate hay within three hours.',
        films: { occasion: 'after', callus: 0 },
      },
      {
        days: 7,
        stage: 'rechecks',
        text: 'First recheck: uses the leg at every step on hay, pin sites dry.',
        films: { occasion: 'recheck', callus: 0.12, scores: { medial: 2, lateral: 1, cranial: 2, caudal: 1 } },
      },
      {
        days: 20,
        stage: 'rechecks',
        text: 'Second recheck: 1425 g, sits up on both hind legs, a little crust at one pin.',
        films: { occasion: 'recheck', callus: 0.75 },
      },
    ],
    slips: [
      { pin: 2, alongMm: 1.8 },
      { pin: 3, tiltDeg: -7 },
    ],
  },
];
