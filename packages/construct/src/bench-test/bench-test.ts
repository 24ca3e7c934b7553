/**
 * A bar of one's own putty on two supports, a weight hung from its middle: modulus and bending strength with their
 * standard deviations. Simply supported bar under a force at midspan, small sag: E = F L^3 / (48 I w), and the stress
 * in the outermost fibre at breaking, F L / (4 Z) (any text on the strength of materials).
 * Shear is left out: 1.2 (E/G) (h/L)^2 of the sag, so under 2 % from 16 heights on; under 8 a bar is refused.
 */
import { InputError } from '@bonewright/fault';

/** A reading and how far it may be off (standard deviation). */
export interface Reading {
  readonly value: number;
  readonly sd: number;
}

export type BarShape =
  /** Height is measured along the pull of the weight. */
  | { readonly kind: 'flat'; readonly widthMm: Reading; readonly heightMm: Reading }
  | { readonly kind: 'round'; readonly diameterMm: Reading };

export interface BenchTest {
  readonly bar: BarShape;
  /** Between the two supports. */
  readonly spanMm: Reading;
  /** Weights hung from the middle and how much further it sagged than without. */
  readonly sags: readonly { readonly massG: number; readonly sagMm: number }[];
  /** How well a sag is read, as a standard deviation. */
  readonly sagSdMm: number;
  /** The weight at which it broke; null where it was not broken. */
  readonly breakingMassG: Reading | null;
}

export interface BenchResult {
  readonly youngMPa: Reading;
  /** Bending strength; null where the bar was not broken. */
  readonly strengthMPa: Reading | null;
  /** Stress under the heaviest weight it was seen to bear. */
  readonly mostBorneMPa: number;
  /** What makes the figures less trustworthy, in words. */
  readonly cautions: readonly string[];
}

/** Sag of a simply supported bar under a force in its middle: F L^3 over so many E I. */
const MIDSPAN = 48;
const STANDARD_GRAVITY = 9.80665;
const GRAMS_PER_KG = 1000;
/** Shorter bars sag by shear as well, and crush at their supports. */
const LEAST_SPAN_HEIGHTS = 8;
/** Under this the shear that is left out stays below 2 %. */
const GOOD_SPAN_HEIGHTS = 16;
/** A sag of more than this share of the span is no small sag. */
const MOST_SAG_SHARE = 0.1;
const LEAST_READINGS = 3;

/** Modulus and strength of a bar. Throws InputError where the readings cannot be of a bar that bends. */
export function benchTest(test: BenchTest): BenchResult {
  checkReadings(test);
  const { bar, spanMm, sags, sagSdMm, breakingMassG } = test;
  const { second, height, section } = sectionOf(bar);
  const compliance = slopeOf(sags, sagSdMm);
  const youngMPa = spanMm.value ** 3 / (MIDSPAN * second.value * compliance.value);
  const youngShare = Math.hypot((3 * spanMm.sd) / spanMm.value, second.share, compliance.sd / compliance.value);
  const stress = (massG: number) => (forceN(massG) * spanMm.value) / (4 * section.value);
  const strengthMPa = breakingMassG && {
    value: stress(breakingMassG.value),
    sd:
      stress(breakingMassG.value) *
      Math.hypot(breakingMassG.sd / breakingMassG.value, spanMm.sd / spanMm.value, section.share),
  };
  return {
    youngMPa: { value: youngMPa, sd: youngMPa * youngShare },
    strengthMPa,
    mostBorneMPa: stress(Math.max(...sags.map(({ massG }) => massG))),
    cautions: cautionsOf(test, height),
  };
}

const forceN = (massG: number): number => (massG * STANDARD_GRAVITY) / GRAMS_PER_KG;

interface Shared {
  readonly value: number;
  /** Standard deviation as a share of the value. */
  readonly share: number;
}

/** Second moment, height and section modulus. In a round bar the diameter's error counts four and three times over. */
function sectionOf(bar: BarShape): { second: Shared; height: number; section: Shared } {
  if (bar.kind === 'round') {
    const d = bar.diameterMm.value;
    const share = bar.diameterMm.sd / d;
    return {
      second: { value: (Math.PI * d ** 4) / 64, share: 4 * share },
      height: d,
      section: { value: (Math.PI * d ** 3) / 32, share: 3 * share },
    };
  }
  const { widthMm: width, heightMm: height } = bar;
  const [b, h] = [width.value, height.value];
  const [bShare, hShare] = [width.sd / b, height.sd / h];
  return {
    second: { value: (b * h ** 3) / 12, share: Math.hypot(bShare, 3 * hShare) },
    height: h,
    section: { value: (b * h ** 2) / 6, share: Math.hypot(bShare, 2 * hShare) },
  };
}

/** Sag per newton, mm/N: the straight line through the origin that fits best, and the spread of its slope. */
function slopeOf(sags: BenchTest['sags'], sagSdMm: number): Reading {
  const points = sags.map(({ massG, sagMm }) => [forceN(massG), sagMm] as const);
  const weight = points.reduce((sum, [force]) => sum + force ** 2, 0);
  const value = points.reduce((sum, [force, sag]) => sum + force * sag, 0) / weight;
  const off = points.reduce((sum, [force, sag]) => sum + (sag - value * force) ** 2, 0);
  const scatter = points.length > 1 ? Math.sqrt(off / (points.length - 1)) : 0;
  return { value, sd: Math.max(scatter, sagSdMm) / Math.sqrt(weight) };
}

function checkReadings({ bar, spanMm, sags, sagSdMm, breakingMassG }: BenchTest): void {
  const sizes = Object.entries(bar).filter((pair): pair is [string, Reading] => typeof pair[1] !== 'string');
  for (const [name, size] of sizes) checkReading(size, `bar.${name}`);
  checkReading(spanMm, 'spanMm');
  const height = bar.kind === 'round' ? bar.diameterMm.value : bar.heightMm.value;
  if (spanMm.value < LEAST_SPAN_HEIGHTS * height)
    throw new InputError(
      `a span of ${spanMm.value} mm is too short for a bar ${height} mm high`,
      'spanMm',
      `give at least ${LEAST_SPAN_HEIGHTS} heights, better ${GOOD_SPAN_HEIGHTS}`,
    );
  if (!(sagSdMm >= 0 && Number.isFinite(sagSdMm)))
    throw new InputError(`a sag cannot be read to ${sagSdMm} mm`, 'sagSdMm', 'give 0 or more');
  if (sags.length === 0) throw new InputError('no weight was hung', 'sags', 'hang three weights and read each sag');
  sags.forEach(({ massG, sagMm }, i) => {
    if (!(massG > 0 && Number.isFinite(massG)))
      throw new InputError(`${massG} g is no weight`, `sags.${i}.massG`, 'give more than 0');
    if (!(sagMm > 0 && Number.isFinite(sagMm)))
      throw new InputError(`a sag of ${sagMm} mm cannot be used`, `sags.${i}.sagMm`, 'hang more until it can be read');
    if (sagMm > MOST_SAG_SHARE * spanMm.value)
      throw new InputError(`a sag of ${sagMm} mm is too much for that span`, `sags.${i}.sagMm`, 'hang less');
  });
  if (breakingMassG) checkBreaking(breakingMassG, sags);
}

function checkBreaking(breakingMassG: Reading, sags: BenchTest['sags']): void {
  checkReading(breakingMassG, 'breakingMassG');
  const heaviest = Math.max(...sags.map(({ massG }) => massG));
  if (breakingMassG.value < heaviest)
    throw new InputError(
      `it broke at ${breakingMassG.value} g and bore ${heaviest} g`,
      'breakingMassG',
      'give the whole weight at which it broke',
    );
}

function checkReading({ value, sd }: Reading, path: string): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new InputError(`${value} is no size or weight`, path, 'give more than 0');
  if (!(sd >= 0 && sd < value)) throw new InputError(`${value} cannot be off by ${sd}`, path, 'measure it again');
}

function cautionsOf({ spanMm, sags, breakingMassG }: BenchTest, height: number): string[] {
  const heights = spanMm.value / height;
  return [
    ...(heights < GOOD_SPAN_HEIGHTS
      ? [
          `The span is ${heights.toFixed(0)} heights: under ${GOOD_SPAN_HEIGHTS} the sag by shear makes the putty look softer than it is.`,
        ]
      : []),
    ...(sags.length < LEAST_READINGS ? ['With fewer than three weights a misread sag is not seen.'] : []),
    ...(breakingMassG ? ['One bar broken says little about the next: mould and break three.'] : []),
    'Tested at room warmth and once: putty at body warmth, wet or bent again and again bears less.',
  ];
}
