/** A straight pin in a curved canal: the straight line that suits the canal best, and the room left beside it. */
import { type Profile, sectionAt } from './profile.ts';

export interface CanalLine {
  /** [medial, cranial] of the straight line at `sMm`. */
  readonly at: (sMm: number) => readonly [number, number];
  /** How far the canal's middle lies off the straight line at `sMm`. */
  readonly bowMm: (sMm: number) => number;
}

const LOOKS = 24;

/** Least-squares straight line through the canal's middle from `fromMm` to `toMm`. */
export function canalLine(profile: Profile, fromMm: number, toMm: number): CanalLine {
  const places = Array.from({ length: LOOKS }, (_, i) => fromMm + ((toMm - fromMm) * (2 * i + 1)) / (2 * LOOKS));
  const middles = places.map((s) => sectionAt(profile, s).offsetMm);
  const lines = ([0, 1] as const).map((axis) =>
    fitted(
      places,
      middles.map((m) => m[axis]),
    ),
  );
  const at = (s: number) => [lines[0]!(s), lines[1]!(s)] as const;
  const bowMm = (s: number) => {
    const [y, z] = at(s);
    const { offsetMm } = sectionAt(profile, s);
    return Math.hypot(offsetMm[0] - y, offsetMm[1] - z);
  };
  return { at, bowMm };
}

/** Room on each side of a pin of that diameter in the canal at `sMm`, the bow taken off; 0 where it touches. */
export function clearanceAt(profile: Profile, line: CanalLine, diameterMm: number, sMm: number): number {
  const { canalMm } = sectionAt(profile, sMm);
  return Math.max(0, (Math.min(...canalMm) - diameterMm) / 2 - line.bowMm(sMm));
}

/** Where the canal is narrowest between two places, and how narrow. */
export function isthmus(profile: Profile, fromMm: number, toMm: number): { sMm: number; canalMm: number } {
  const inside = profile.stations.map((s) => s.sMm).filter((s) => s > fromMm && s < toMm);
  const widths = [fromMm, ...inside, toMm].map((sMm) => ({
    sMm,
    canalMm: Math.min(...sectionAt(profile, sMm).canalMm),
  }));
  return widths.reduce((a, b) => (b.canalMm < a.canalMm ? b : a));
}

/** Least-squares straight line through y over x, as a function. */
export function fitted(x: readonly number[], y: readonly number[]): (at: number) => number {
  const n = x.length;
  const mx = x.reduce((a, b) => a + b, 0) / n;
  const my = y.reduce((a, b) => a + b, 0) / n;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i += 1) {
    xx += (x[i]! - mx) ** 2;
    xy += (x[i]! - mx) * (y[i]! - my);
  }
  const slope = xx > 0 ? xy / xx : 0;
  return (at) => my + slope * (at - mx);
}
