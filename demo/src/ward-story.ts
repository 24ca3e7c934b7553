/** How the invented patients came in, slept and did afterwards: what the ward wrote beside the surgeon's work. */
import type { EventDraft, EventKind } from '@bonewright/casebook';
import type { CaseWriter } from './case-writer.ts';
import { CARER, NURSE, type PatientKey, SURGEON } from './patients.ts';

type Draft<K extends EventKind> = Extract<EventDraft, { kind: K }>['payload'];

interface Visit {
  readonly massG?: number;
  readonly ate?: Draft<'fed'>['ate'];
  readonly feed?: string;
  /** Words for each pin's skin; the rest are dry. */
  readonly pinSites?: Readonly<Record<number, 'dry' | 'crust' | 'wet' | 'swollen'>>;
  readonly limb?: string;
  readonly question?: readonly [asked: string, answered: string | null];
  /** Days until the next look. */
  readonly nextInDays?: number;
}

interface WardStory {
  readonly admission: Draft<'admission-noted'>;
  /** Heart, breaths and temperature every five minutes while it slept. */
  readonly asleep: readonly (readonly [heart: number, breaths: number, temperatureC: number])[];
  /** By the number of the visit, from 0. */
  readonly visits: readonly Visit[];
}

const RESCUE = { name: 'Thornbeck Wildlife Rescue', contact: 'the duty telephone' };
const unhurt = { feels: 'yes', bloodReaches: 'yes', consent: 'given', decides: 'surgeon and rescue together' } as const;

const STORIES: Readonly<Record<PatientKey, WardStory>> = {
  squirrel: {
    admission: {
      ...unhurt,
      rescue: RESCUE,
      finder: { name: 'a walker', contact: 'known to the rescue' },
      place: {
        words: 'foot of the old pines, Thornbeck road',
        mapReference: '',
        latitudeDeg: 54.42,
        longitudeDeg: -2.96,
      },
      cause: 'not seen; a car or a fall',
      scale: 'parcel scale, 1 g',
      inMilk: 'no',
      wound: 'closed',
      boneShows: 'no',
      otherInjuries: 'none found',
      givenBefore: 'warmth, nothing by mouth',
    },
    asleep: [],
    visits: [],
  },
  owl: {
    admission: {
      ...unhurt,
      rescue: RESCUE,
      finder: { name: 'the driver', contact: 'known to the rescue' },
      place: { words: 'mill lane, by the second gate', mapReference: '', latitudeDeg: 54.38, longitudeDeg: -2.91 },
      cause: 'struck by a car',
      scale: 'parcel scale, 1 g',
      inMilk: 'not looked',
      wound: 'open',
      boneShows: 'no',
      otherInjuries: 'eyes clear, keel well covered',
      givenBefore: 'dark box, nothing else',
    },
    asleep: [],
    visits: [],
  },
  hedgehog: {
    admission: {
      ...unhurt,
      rescue: RESCUE,
      finder: { name: 'the groundsman', contact: 'known to the rescue' },
      place: { words: 'cricket green, by the roller shed', mapReference: '', latitudeDeg: 54.33, longitudeDeg: -2.75 },
      cause: 'not seen',
      scale: 'kitchen scale, 5 g',
      inMilk: 'no',
      wound: 'closed',
      boneShows: 'no',
      otherInjuries: 'ticks, two',
      givenBefore: 'incubator, two hours',
    },
    asleep: [
      [182, 24, 34.9],
      [176, 22, 34.6],
      [170, 20, 34.4],
      [168, 18, 34.3],
      [171, 18, 34.1],
      [174, 20, 34.2],
      [178, 20, 34.4],
      [180, 22, 34.6],
      [188, 24, 34.8],
    ],
    visits: [
      {},
      {
        massG: 846,
        ate: 'most',
        feed: 'cat food, meat',
        pinSites: {},
        question: ['He has wound hay round the bar. Take it off?', null],
        nextInDays: 9,
      },
    ],
  },
  rabbit: {
    admission: {
      ...unhurt,
      rescue: RESCUE,
      finder: { name: 'allotment holders', contact: 'known to the rescue' },
      place: { words: 'allotments behind the school', mapReference: '', latitudeDeg: 54.36, longitudeDeg: -2.83 },
      cause: 'a cat',
      scale: 'baby scale, 10 g',
      inMilk: 'no',
      wound: 'closed',
      boneShows: 'no',
      otherInjuries: 'tooth marks on the back, skin whole',
      givenBefore: 'hay and quiet',
    },
    asleep: [
      [236, 44, 38.4],
      [228, 40, 38.2],
      [224, 36, 38.0],
      [220, 36, 37.9],
      [216, 34, 37.8],
      [219, 36, 37.8],
      [224, 38, 38.0],
      [230, 42, 38.2],
    ],
    visits: [
      { ate: 'some', feed: 'hay' },
      {
        massG: 1438,
        ate: 'all',
        feed: 'hay and greens',
        pinSites: {},
        limb: 'some weight',
        question: ['May she have straw instead of hay to lie on?', 'Yes, dry straw, no loops of twine.'],
        nextInDays: 13,
      },
      {
        massG: 1465,
        ate: 'all',
        feed: 'hay and greens',
        pinSites: { 4: 'crust' },
        limb: 'as the other side',
        nextInDays: 8,
      },
    ],
  },
};

/** What the rescue and the surgeon said when it came. */
export function tellAdmission(writer: CaseWriter, key: PatientKey, isOperated: boolean): void {
  writer.sign(CARER, 'admission-noted', { ...STORIES[key].admission, foundAt: writer.now() });
  if (isOperated) writer.sign(SURGEON, 'course-decided', { course: 'operate', decidedBy: 'R. Fenn and the rescue' });
}

const FIVE_MINUTES = 5;

/** The chart of the anaesthetic that ends now. */
export function tellSleep(writer: CaseWriter, key: PatientKey): void {
  const { asleep } = STORIES[key];
  const minutesAgo = (count: number): string => new Date(Date.parse(writer.now()) - count * 60_000).toISOString();
  for (const [i, [heartPerMin, breathsPerMin, temperatureC]] of asleep.entries()) {
    writer.sign(NURSE, 'reading-taken', {
      readingId: `demo-${key}-reading-${i + 1}`,
      at: minutesAgo((asleep.length - i) * FIVE_MINUTES),
      heartPerMin,
      breathsPerMin,
      temperatureC,
      spo2Percent: 96 + (i % 3),
      co2MmHg: null,
      vaporiserPercent: i < 2 ? 2.5 : 2,
      oxygenLPerMin: 1,
      note: '',
    });
  }
  if (asleep.length > 0) writer.sign(NURSE, 'chart-marked', { at: writer.now(), mark: 'vaporiser off', words: '' });
}

/** Weight, food, pins and limb at one visit after the operation, and when the next is. */
export function tellVisit(writer: CaseWriter, key: PatientKey, visit: number, pinCount: number): void {
  const said = STORIES[key].visits[visit];
  if (!said) return;
  const at = writer.now();
  if (said.massG) writer.sign(CARER, 'weighed', { at, massG: said.massG, withFrame: true, scale: 'kitchen scale' });
  if (said.ate) writer.sign(CARER, 'fed', { at, feed: said.feed ?? 'feed', grams: null, ate: said.ate, note: '' });
  for (const pin of said.pinSites ? Array.from({ length: pinCount }, (_, i) => i + 1) : []) {
    const grade = said.pinSites?.[pin] ?? 'dry';
    const site = { scale: 'plain words', grade, words: '', photo: null, isSeenInPerson: true };
    writer.sign(CARER, 'pin-site-seen', { at, pin, ...site });
  }
  if (said.limb) writer.sign(NURSE, 'limb-use-seen', { at, scale: 'plain words', grade: said.limb, words: '' });
  if (said.question) ask(writer, `demo-${key}-question-${visit}`, said.question);
  if (said.nextInDays !== undefined) setNext(writer, said.nextInDays);
}

function ask(writer: CaseWriter, questionId: string, [asked, answered]: readonly [string, string | null]): void {
  writer.sign(CARER, 'question-asked', { questionId, at: writer.now(), words: asked });
  if (answered) writer.sign(SURGEON, 'question-answered', { questionId, words: answered });
}

const MS_A_DAY = 86_400_000;

function setNext(writer: CaseWriter, days: number): void {
  const on = new Date(Date.parse(writer.now()) + days * MS_A_DAY).toISOString().slice(0, 10);
  writer.sign(NURSE, 'recheck-set', { on, what: 'pins, weight and two films', who: NURSE });
}
