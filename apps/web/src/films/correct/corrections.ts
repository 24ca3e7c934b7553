/** What the surgeon says against a trace, one station at a time; the record holds all that stands. */
import type { FilmState } from '@bonewright/casebook';
import {
  type Correction,
  correctedTrace,
  type Pixel,
  type Trace,
  type TraceStation,
  type WallSide,
} from '@bonewright/film';

/** A station of a trace, by its fragment. */
export interface Place {
  readonly segment: string;
  readonly sMm: number;
}

const made = new WeakMap<readonly Correction[], { readonly of: Trace; readonly trace: Trace }>();

/** The trace as it stands: with its corrections. Null where the film is not traced. */
export function asCorrected({ trace, corrections }: FilmState): Trace | null {
  if (!trace || !corrections || trace.value.mmPerPixel.value === null) return trace?.value ?? null;
  const known = made.get(corrections.value);
  if (known?.of === trace.value) return known.trace;
  const corrected = correctedTrace(trace.value, corrections.value);
  made.set(corrections.value, { of: trace.value, trace: corrected });
  return corrected;
}

export const isAt = ({ segment, sMm }: Place, other: Place): boolean => segment === other.segment && sMm === other.sMm;
export const isOut = (correction: Correction): boolean => 'exclude' in correction;

/** With that edge where it was put; an edge put before at the same place gives way, and the station counts again. */
export function withEdge(all: readonly Correction[], at: Place, side: WallSide, place: Pixel): Correction[] {
  const others = all.filter((old) => !isAt(old, at) || (!isOut(old) && 'side' in old && old.side !== side));
  return [...others, { ...at, side, place }];
}

/** Without that station: what was said of its edges goes too. */
export const withoutStation = (all: readonly Correction[], at: Place): Correction[] => [
  ...withNothingAt(all, at),
  { ...at, exclude: true },
];

/** As the trace has it at that station. */
export const withNothingAt = (all: readonly Correction[], at: Place): Correction[] =>
  all.filter((old) => !isAt(old, at));

/** Every station in order, fragment by fragment. */
export const placesOf = (trace: Trace): Place[] =>
  trace.segments.flatMap(({ name, stations }) => stations.map(({ sMm }) => ({ segment: name, sMm })));

export const stationAt = (trace: Trace, { segment, sMm }: Place): TraceStation | null =>
  trace.segments.find(({ name }) => name === segment)?.stations.find((station) => station.sMm === sMm) ?? null;

/** The station whose middle is nearest to a place on the film. */
export function nearestPlace(trace: Trace, [x, y]: Pixel): Place | null {
  const away = trace.segments.flatMap(({ name, stations }) =>
    stations.map(({ sMm, centre }) => ({ segment: name, sMm, px: Math.hypot(centre[0] - x, centre[1] - y) })),
  );
  const [nearest] = away.toSorted((a, b) => a.px - b.px);
  return nearest ? { segment: nearest.segment, sMm: nearest.sMm } : null;
}
