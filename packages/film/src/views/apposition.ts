/** What faces what at the fracture: widths and sections of two fragments that have slipped sideways. */
import type { Measured } from '../model/trace.ts';

type Pair<T> = readonly [craniocaudal: T, mediolateral: T];

/**
 * Offsets seen in two views and the bone's widths there to the true offset, the share of each width in contact and
 * the share of the section: two equal ellipses apart, the lens of two circles after scaling (closed form).
 */
export function apposition(
  offsetMm: Pair<Measured>,
  widthMm: Pair<number>,
  betweenViewsDeg: number,
): {
  readonly trueOffsetMm: Measured;
  readonly appositionShare: Pair<Measured>;
  readonly appositionOfSection: Measured;
} {
  const shares = offsetMm.map((m, i) => shareOf(m, widthMm[i]!)) as unknown as Pair<Measured>;
  const [a, b] = offsetMm;
  if (a.value === null || b.value === null) {
    const none: Measured = { value: null, sd: null, why: `one view shows no offset: ${a.why ?? b.why ?? ''}` };
    return { trueOffsetMm: none, appositionShare: shares, appositionOfSection: none };
  }
  const trueOffset = (x: number, y: number) => Math.hypot(...square(x, y, betweenViewsDeg));
  const section = (x: number, y: number) => {
    const [p, q] = square(x, y, betweenViewsDeg);
    return lens(Math.hypot((2 * p) / widthMm[0], (2 * q) / widthMm[1]));
  };
  return {
    trueOffsetMm: spread(trueOffset, a, b),
    appositionShare: shares,
    appositionOfSection: spread(section, a, b),
  };
}

/** Across vector in square axes, the first view's first. */
function square(x: number, y: number, betweenViewsDeg: number): readonly [number, number] {
  const g = (betweenViewsDeg * Math.PI) / 180;
  return [x, (y - x * Math.cos(g)) / Math.sin(g)];
}

function shareOf(m: Measured, widthMm: number): Measured {
  if (m.value === null) return m;
  return { value: Math.max(0, 1 - Math.abs(m.value) / widthMm), sd: m.sd! / widthMm };
}

/** Common area of two circles of radius 1, `d` apart, over one of them. */
const lens = (d: number): number => (d >= 2 ? 0 : (2 * Math.acos(d / 2) - (d / 2) * Math.sqrt(4 - d * d)) / Math.PI);

/** A function of two measurements with its sd, from a step of one sd to the worse side of each. */
function spread(f: (x: number, y: number) => number, a: Measured, b: Measured): Measured {
  const [x, y] = [a.value!, b.value!];
  const value = f(x, y);
  const step = (dx: number, dy: number) =>
    Math.max(Math.abs(f(x + dx, y + dy) - value), Math.abs(f(x - dx, y - dy) - value));
  return { value, sd: Math.hypot(step(a.sd!, 0), step(0, b.sd!)) };
}
