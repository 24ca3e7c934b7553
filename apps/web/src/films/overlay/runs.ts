/** Walls as unbroken runs of stations: a gap where nothing was found, a new run where it becomes less sure. */
import type { Pixel, TraceStation } from '@bonewright/film';

export interface Run {
  readonly isSure: boolean;
  readonly points: readonly (readonly [Pixel, Pixel])[];
}

interface GrowingRun {
  readonly isSure: boolean;
  readonly points: (readonly [Pixel, Pixel])[];
}

/** A reading this much less sure than the middle one of its wall is drawn dashed. */
const LESS_SURE = 2;

export function runsOf(stations: readonly TraceStation[], wall: 'outer' | 'canal'): Run[] {
  const limit = LESS_SURE * middle(stations.flatMap((station) => sdOf(station, wall) ?? []));
  const runs: GrowingRun[] = [];
  let isBroken = true;
  for (const station of stations) {
    const pair = station.walls[wall];
    isBroken ||= pair === null;
    if (!pair) continue;
    const isSure = (sdOf(station, wall) ?? Number.POSITIVE_INFINITY) <= limit;
    const last = runs.at(-1);
    if (last && !isBroken && last.isSure === isSure) last.points.push(pair);
    else {
      // Begins where the last run ended, so that the line does not break where only its sureness changes.
      const joint = isBroken ? undefined : last?.points.at(-1);
      runs.push({ isSure, points: joint ? [joint, pair] : [pair] });
    }
    isBroken = false;
  }
  return runs;
}

const sdOf = (station: TraceStation, wall: 'outer' | 'canal'): number | null =>
  (wall === 'outer' ? station.outerMm : station.canalMm).sd;

function middle(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.POSITIVE_INFINITY;
}
