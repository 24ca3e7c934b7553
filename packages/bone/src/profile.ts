/**
 * A bone's profile along s from its stations: linear between stations, held at the ends.
 * Pairs are [medial to lateral, cranial to caudal] in mm, offsets [medial, cranial].
 * A canal nobody could measure is filled in with a stated assumption and a wider standard deviation.
 */
import { value } from '@bonewright/evidence';
import type { Ring } from './ring.ts';

export type Pair = readonly [number, number];

export interface Station {
  readonly sMm: number;
  readonly outerMm: Pair;
  /** Null where no canal edge could be found. */
  readonly canalMm: Pair | null;
  readonly offsetMm: Pair;
  readonly sdMm: number;
}

export interface ProfileStation {
  readonly sMm: number;
  readonly outerMm: Pair;
  readonly canalMm: Pair;
  readonly offsetMm: Pair;
  readonly sdMm: number;
  readonly canalSdMm: number;
}

export type CanalBasis = 'measured' | 'neighbouring stations' | 'usual bore of the class';

export interface Profile {
  readonly lengthMm: number;
  readonly stations: readonly ProfileStation[];
  /** The weakest basis any station's canal rests on. */
  readonly canalBasis: CanalBasis;
}

export type BoreClass = 'bird' | 'mammal';

/** Fills in the stations; they must be ordered along s. `boreClass` decides the bore where no canal was measured. */
export function profileOf(lengthMm: number, stations: readonly Station[], boreClass: BoreClass): Profile {
  const measured = stations.filter((s) => s.canalMm !== null);
  const canalBasis: CanalBasis =
    measured.length === stations.length
      ? 'measured'
      : measured.length > 0
        ? 'neighbouring stations'
        : 'usual bore of the class';
  return { lengthMm, canalBasis, stations: stations.map((s) => filled(s, measured, boreClass)) };
}

function filled(station: Station, measured: readonly Station[], boreClass: BoreClass): ProfileStation {
  const { sMm, outerMm, offsetMm, sdMm, canalMm } = station;
  if (canalMm) return { sMm, outerMm, canalMm, offsetMm, sdMm, canalSdMm: sdMm };
  const unsure = value('bone.bore-ratio.assumed-sd') * ((outerMm[0] + outerMm[1]) / 2);
  const bore = measured.length > 0 ? boreAt(measured, sMm) : classBore(boreClass);
  const assumed: Pair = [bore[0] * outerMm[0], bore[1] * outerMm[1]];
  return { sMm, outerMm, canalMm: assumed, offsetMm, sdMm, canalSdMm: Math.hypot(sdMm, unsure) };
}

function classBore(boreClass: BoreClass): Pair {
  const ratio = value(`bone.${boreClass}.bore-ratio`);
  return [ratio, ratio];
}

function boreAt(measured: readonly Station[], sMm: number): Pair {
  const after = measured.find((s) => s.sMm >= sMm) ?? measured[measured.length - 1]!;
  const before = measured.findLast((s) => s.sMm <= sMm) ?? after;
  const t = share(before.sMm, after.sMm, sMm);
  const ratio = (s: Station, axis: 0 | 1) => (s.canalMm?.[axis] ?? 0) / s.outerMm[axis];
  return [mix(ratio(before, 0), ratio(after, 0), t), mix(ratio(before, 1), ratio(after, 1), t)];
}

/** The ring section, axis offset and standard deviations at `sMm`. */
export function sectionAt(profile: Profile, sMm: number): Section {
  const { stations } = profile;
  let low = 0;
  let high = stations.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stations[middle]!.sMm <= sMm) low = middle;
    else high = middle;
  }
  const a = stations[low]!;
  const b = stations[high]!;
  const t = share(a.sMm, b.sMm, sMm);
  return {
    outerMm: mixPair(a.outerMm, b.outerMm, t),
    canalMm: mixPair(a.canalMm, b.canalMm, t),
    offsetMm: mixPair(a.offsetMm, b.offsetMm, t),
    sdMm: mix(a.sdMm, b.sdMm, t),
    canalSdMm: mix(a.canalSdMm, b.canalSdMm, t),
  };
}

export interface Section extends Ring {
  readonly offsetMm: Pair;
  readonly sdMm: number;
  readonly canalSdMm: number;
}

/** The same bone with its outer width and canal changed by so many mm at each station; a wall is always left. */
export function changed(
  profile: Profile,
  outerByMm: (station: ProfileStation) => number,
  canalByMm: (station: ProfileStation) => number,
): Profile {
  const canalShare = 1 - value('bone.thinnest-wall-share');
  const stations = profile.stations.map((station) => {
    const { sMm, offsetMm, sdMm, canalSdMm } = station;
    const outerMm = shifted(station.outerMm, outerByMm(station));
    const canal = shifted(station.canalMm, canalByMm(station));
    const canalMm: Pair = [Math.min(canal[0], outerMm[0] * canalShare), Math.min(canal[1], outerMm[1] * canalShare)];
    return { sMm, outerMm, canalMm, offsetMm, sdMm, canalSdMm };
  });
  return { ...profile, stations };
}

const shifted = (pair: Pair, by: number): Pair => [Math.max(pair[0] + by, 0), Math.max(pair[1] + by, 0)];

const share = (from: number, to: number, at: number): number =>
  to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : 0;
const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
const mixPair = (a: Pair, b: Pair, t: number): Pair => [mix(a[0], b[0], t), mix(a[1], b[1], t)];
