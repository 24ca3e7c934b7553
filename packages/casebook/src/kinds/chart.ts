/** The anaesthetic chart, the fluids and the checklists: what the nurse writes while the surgeon operates. */
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import type { Frozen } from '../frozen.ts';
import { idSchema, timeSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

/** A line of a list, as a slug: `tube-and-cuff`. */
const itemSchema = z.string().regex(/^[a-z][a-z0-9-]{1,60}$/, 'an item is a slug of small letters');
const line = z.string().max(300);
const most = (max: number) => z.number().min(0).max(max).nullable();

/** One look at the patient; null where it was not read. */
export const readingTaken = z.strictObject({
  readingId: idSchema,
  at: timeSchema,
  heartPerMin: most(1000),
  breathsPerMin: most(400),
  spo2Percent: most(100),
  co2MmHg: most(200),
  temperatureC: z.number().min(0).max(50).nullable(),
  vaporiserPercent: most(10),
  oxygenLPerMin: most(15),
  note: line,
});
export const readingTakenBack = z.strictObject({ readingId: idSchema });

export const CHART_MARKS = [
  'premedication',
  'induction',
  'first cut',
  'last stitch',
  'vaporiser off',
  'tube out',
  'righted itself',
  'apnoea',
  'arrest',
  'other',
] as const;

/** Something that happened at a moment of the chart. */
export const chartMarked = z.strictObject({ at: timeSchema, mark: z.enum(CHART_MARKS), words: line });

export const bloodLost = z.strictObject({
  at: timeSchema,
  ml: z.number().min(0).max(1000),
  /** Swabs weighed wet and dry, or read off. */
  swabs: z.strictObject({ wetG: z.number().min(0), dryG: z.number().min(0) }).nullable(),
});

export const fluidGiven = z.strictObject({
  at: timeSchema,
  ml: z.number().min(0).max(5000),
  what: line.min(1),
  route: z.enum(['SC', 'IV', 'IO', 'IP', 'PO']),
});

/** A plan of fluids, or of food, as somebody chose it: the figures it came from stand with it. */
export const fluidsPlanned = z.strictObject({
  massG: z.number().positive(),
  dehydrationPercent: z.number().min(0).max(30),
  maintenanceMlPerKgDay: z.number().min(0).max(500),
  otherLossesMl: z.number().min(0),
  overHours: z.number().positive().max(96),
  mlPerHour: z.number().min(0),
  what: line.min(1),
  route: z.enum(['SC', 'IV', 'IO', 'IP', 'PO']),
});

export const feedPlanned = z.strictObject({
  massG: z.number().positive(),
  kcalPerDay: z.number().positive(),
  feed: line.min(1),
  kcalPer100G: z.number().positive(),
  gramsPerDay: z.number().positive(),
  mealsPerDay: z.number().int().positive().max(48),
});

export const CHECKLISTS = ['before induction', 'before the first cut', 'before waking'] as const;

/** One line of a checklist: done, or not and why. Said again, the last word stands. */
export const checkTicked = z
  .strictObject({ list: z.enum(CHECKLISTS), item: itemSchema, isDone: z.boolean(), note: line })
  .refine(({ isDone, note }) => isDone || note.trim() !== '', { message: 'what is not done says why', path: ['note'] });

export type Reading = Frozen<z.output<typeof readingTaken>>;
export type Checklist = (typeof CHECKLISTS)[number];
export type ChartMark = (typeof CHART_MARKS)[number];
export type ChartEvent = EventOf<
  | 'reading-taken'
  | 'reading-taken-back'
  | 'chart-marked'
  | 'blood-lost'
  | 'fluid-given'
  | 'fluids-planned'
  | 'feed-planned'
  | 'check-ticked'
>;
type Said<K extends ChartEvent['kind']> = Signed<EventOf<K>['payload']>;

export interface Chart {
  /** In the order of their moments. */
  readonly readings: readonly Said<'reading-taken'>[];
  readonly marks: readonly Said<'chart-marked'>[];
  readonly blood: readonly Said<'blood-lost'>[];
  readonly fluids: readonly Said<'fluid-given'>[];
  readonly fluidPlan: Said<'fluids-planned'> | null;
  readonly feedPlan: Said<'feed-planned'> | null;
  /** The last word on each line of each list. */
  readonly checks: readonly Said<'check-ticked'>[];
}

export const emptyChart: Chart = {
  readings: [],
  marks: [],
  blood: [],
  fluids: [],
  fluidPlan: null,
  feedPlan: null,
  checks: [],
};

export function applyChart(chart: Chart, event: ChartEvent): Chart {
  switch (event.kind) {
    case 'reading-taken': {
      const others = chart.readings.filter(({ value }) => value.readingId !== event.payload.readingId);
      return { ...chart, readings: inTime([...others, signed(event, event.payload)]) };
    }
    case 'reading-taken-back': {
      const { readingId } = event.payload;
      return { ...chart, readings: chart.readings.filter(({ value }) => value.readingId !== readingId) };
    }
    case 'chart-marked':
      return { ...chart, marks: inTime([...chart.marks, signed(event, event.payload)]) };
    case 'blood-lost':
      return { ...chart, blood: inTime([...chart.blood, signed(event, event.payload)]) };
    case 'fluid-given':
      return { ...chart, fluids: inTime([...chart.fluids, signed(event, event.payload)]) };
    case 'fluids-planned':
      return { ...chart, fluidPlan: signed(event, event.payload) };
    case 'feed-planned':
      return { ...chart, feedPlan: signed(event, event.payload) };
    case 'check-ticked': {
      const { list, item } = event.payload;
      const others = chart.checks.filter(({ value }) => value.list !== list || value.item !== item);
      return { ...chart, checks: [...others, signed(event, event.payload)] };
    }
  }
}

/** Sorted by moment; two of one moment stay in the order in which they were written. */
function inTime<T extends { readonly at: string }>(said: readonly Signed<T>[]): readonly Signed<T>[] {
  return said.toSorted((a, b) => (a.value.at < b.value.at ? -1 : Number(a.value.at > b.value.at)));
}

export function chartSentence(event: ChartEvent): string {
  switch (event.kind) {
    case 'reading-taken':
      return `Chart read: ${readingWords(event.payload)}.`;
    case 'reading-taken-back':
      return 'A reading of the chart taken back.';
    case 'chart-marked':
      return `On the chart: ${event.payload.mark}${event.payload.words ? `, ${event.payload.words}` : ''}.`;
    case 'blood-lost':
      return `Blood lost: ${event.payload.ml} ml.`;
    case 'fluid-given':
      return `Fluid given: ${event.payload.ml} ml of ${event.payload.what} ${event.payload.route}.`;
    case 'fluids-planned':
      return `Fluids planned: ${event.payload.what} ${event.payload.route}, ${event.payload.mlPerHour.toFixed(1)} ml an hour over ${event.payload.overHours} h.`;
    case 'feed-planned':
      return `Feed planned: ${event.payload.gramsPerDay.toFixed(0)} g of ${event.payload.feed} a day in ${event.payload.mealsPerDay} meals.`;
    case 'check-ticked': {
      const { list, item, isDone, note } = event.payload;
      return `Check ${list}: ${item.replaceAll('-', ' ')} ${isDone ? 'done' : 'not done'}${note ? `, ${note}` : ''}.`;
    }
  }
}

const READ: readonly (readonly [keyof Reading, string, string])[] = [
  ['heartPerMin', 'heart', ''],
  ['breathsPerMin', 'breaths', ''],
  ['spo2Percent', 'SpO2', ' %'],
  ['co2MmHg', 'CO2', ' mmHg'],
  ['temperatureC', 'temperature', ' °C'],
  ['vaporiserPercent', 'vaporiser', ' %'],
  ['oxygenLPerMin', 'oxygen', ' l/min'],
];

function readingWords(reading: Reading): string {
  const said = READ.flatMap(([key, name, unit]) => (reading[key] === null ? [] : [`${name} ${reading[key]}${unit}`]));
  return [...said, ...(reading.note ? [reading.note] : [])].join(', ') || 'nothing could be read';
}
