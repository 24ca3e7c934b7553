/**
 * The bone's cross section at any place between its stations: linear between stations, held at the ends, and honest
 * about a canal that nobody measured. Pairs are [medial, cranial]; aboutDeg 0 is medial, +90 cranial; lengths in mm.
 */
import { wallAt } from '@bonewright/bone';
import type { StationInput } from '@bonewright/construct';

export type Pair = readonly [number, number];

export interface Section {
  /** Outer size medial to lateral and cranial to caudal. */
  readonly outerMm: Pair;
  /** Null where none was measured on either side of this place. */
  readonly canalMm: Pair | null;
  /** The axis off the straight line between the bone's ends. */
  readonly offset: Pair;
}

const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
const mixPair = (a: Pair, b: Pair, t: number): Pair => [mix(a[0], b[0], t), mix(a[1], b[1], t)];

interface Placed {
  readonly sMm: number;
}

/** The two neighbours of a place and the share of the way from the first to the second; null for an empty list. */
function between<T extends Placed>(places: readonly T[], sMm: number): readonly [T, T, number] | null {
  const next = places.find((place) => place.sMm >= sMm) ?? places.at(-1);
  const last = places.findLast((place) => place.sMm <= sMm) ?? next;
  if (!next || !last) return null;
  return [last, next, next.sMm > last.sMm ? (sMm - last.sMm) / (next.sMm - last.sMm) : 0];
}

/** Section at sMm; stations in order along the bone, at least one. */
export function sectionAt(stations: readonly StationInput[], sMm: number): Section {
  const found = between(stations, sMm);
  if (!found) return { outerMm: [0, 0], canalMm: null, offset: [0, 0] };
  const [last, next, t] = found;
  return {
    outerMm: mixPair(last.outerMm, next.outerMm, t),
    canalMm: last.canalMm && next.canalMm && mixPair(last.canalMm, next.canalMm, t),
    offset: mixPair(last.offsetMm, next.offsetMm, t),
  };
}

/** From the middle of an oval with those sizes to its edge, along aboutDeg. */
export const radiusAlong = (sizeMm: Pair, aboutDeg: number): number =>
  wallAt({ outerMm: sizeMm, canalMm: [0, 0] }, aboutDeg).outerRadiusMm;

/** Unit vector [medial, cranial] of aboutDeg. */
export function direction(aboutDeg: number): Pair {
  const rad = (aboutDeg * Math.PI) / 180;
  return [Math.cos(rad), Math.sin(rad)];
}
