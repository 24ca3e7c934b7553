/** The lines of an anaesthetic chart: what is read, in which steps, and what is usual for the species behind it. */
import { type Entry, entry } from '@bonewright/evidence';
import { isBird, speciesName } from '../doses/patient-kind.ts';

/** What one look at the patient holds; null where it was not read. */
export interface ReadValues {
  readonly heartPerMin: number | null;
  readonly breathsPerMin: number | null;
  readonly spo2Percent: number | null;
  readonly co2MmHg: number | null;
  readonly temperatureC: number | null;
  readonly vaporiserPercent: number | null;
  readonly oxygenLPerMin: number | null;
}

export type LaneKey = keyof ReadValues;

/** A whole reading, line by line. */
export const readValues = (of: (key: LaneKey) => number | null): ReadValues => ({
  heartPerMin: of('heartPerMin'),
  breathsPerMin: of('breathsPerMin'),
  spo2Percent: of('spo2Percent'),
  co2MmHg: of('co2MmHg'),
  temperatureC: of('temperatureC'),
  vaporiserPercent: of('vaporiserPercent'),
  oxygenLPerMin: of('oxygenLPerMin'),
});

export interface Lane {
  readonly key: LaneKey;
  readonly word: string;
  readonly unit: string;
  /** One press of plus or minus. */
  readonly step: number;
  readonly decimals: number;
  readonly most: number;
  /** Where the first press lands while nothing was ever read: a place to step from, not a figure of any patient. */
  readonly from: number;
}

export const LANES: readonly Lane[] = [
  { key: 'heartPerMin', word: 'Heart', unit: '/min', step: 5, decimals: 0, most: 1000, from: 200 },
  { key: 'breathsPerMin', word: 'Breaths', unit: '/min', step: 2, decimals: 0, most: 400, from: 40 },
  { key: 'spo2Percent', word: 'SpO2', unit: '%', step: 1, decimals: 0, most: 100, from: 95 },
  { key: 'co2MmHg', word: 'CO2', unit: 'mmHg', step: 1, decimals: 0, most: 200, from: 40 },
  { key: 'temperatureC', word: 'Temperature', unit: '°C', step: 0.1, decimals: 1, most: 50, from: 37 },
  { key: 'vaporiserPercent', word: 'Vaporiser', unit: '%', step: 0.25, decimals: 2, most: 10, from: 2 },
  { key: 'oxygenLPerMin', word: 'Oxygen', unit: 'l/min', step: 0.1, decimals: 1, most: 15, from: 1 },
];

export interface Usual {
  readonly entry: Entry;
  /** Not seen in a study or a textbook. */
  readonly isWeak: boolean;
}

const IDS: Readonly<Record<string, Partial<Record<LaneKey, readonly string[]>>>> = {
  rabbit: {
    heartPerMin: ['vitals.rabbit.heart'],
    breathsPerMin: ['vitals.rabbit.breathing'],
    temperatureC: ['vitals.rabbit.temperature', 'vitals.rabbit.temperature-measured'],
  },
  hedgehog: { heartPerMin: ['vitals.hedgehog.heart'], temperatureC: ['vitals.hedgehog.temperature'] },
};
const OF_BIRDS: Partial<Record<LaneKey, readonly string[]>> = { temperatureC: ['vitals.bird.temperature'] };

/** Published usual figures of that line for the species, awake; none where none were found. */
export function usualOf(species: string, key: LaneKey): Usual[] {
  const ids = IDS[speciesName(species)] ?? (isBird(species) ? OF_BIRDS : {});
  return (ids[key] ?? []).map((id) => {
    const found = entry(id);
    return { entry: found, isWeak: found.status !== 'seen' || (found.note ?? '').includes('weak') };
  });
}

/** `130 to 325 /min`, or one figure where the source gives one. */
export function usualWords({ entry: { low, high, unit } }: Usual): string {
  const range = low === high ? `about ${low}` : `${low} to ${high}`;
  return `${range} ${unit === 'degC' ? '°C' : unit}`;
}

/** What a line's axis spans: everything read and everything usual, with a little room. */
export function laneSpan(values: readonly number[], usual: readonly Usual[], step: number): readonly [number, number] {
  const all = [...values, ...usual.flatMap(({ entry: { low, high } }) => [low, high])];
  if (all.length === 0) return [0, 1];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max((high - low) / 10, step);
  return [Math.max(0, low - room), high + room];
}
