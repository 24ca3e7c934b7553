/**
 * What the film shows across the bone at one s, and its derivatives:
 *   b0 + b1 u + b2 u^2 + b3 u^3 + m - k m^2 / ho,   u = (x - co)/ao,   m = sum of shadows h f((x - c)/a),   f(t) = sqrt(1 - t^2)
 * blurred by a Gaussian and a faint wider one: f is the shadow of any elliptical section, whichever way it is turned.
 * Shadows: outer (+), canal (-), and where there is one, the second bone (+) and its canal (-). k is what scatter and
 * beam hardening take from the tops of the shadow. Blur acts on the beam, so m is corrected for it (beam-blur.ts).
 */
import { value as evidence } from '@bonewright/evidence';
import { blurDeficit, type Shadow } from './beam-blur.ts';
import { type BlurredHalfEllipse, blurredHalfEllipse, shadowAt } from './half-ellipse.ts';
import { ALONE, GLOBAL_COUNT, PART } from './layout.ts';

/** A second bone's canal over its width. */
const SECOND_CANAL = 0.5;

/** A half-ellipse blurred by core and tail, with what its derivatives need, and the parts it belongs to. */
interface Blurred {
  readonly shadow: Shadow;
  readonly core: BlurredHalfEllipse;
  readonly wide: BlurredHalfEllipse;
  /** Indices of its centre, half-width and height among the parts; the half-width's share; the height's sign. */
  readonly centre: number;
  readonly half: number;
  readonly height: number;
  readonly share: number;
  readonly sign: 1 | -1;
}

interface Kernel {
  readonly blurPx: number;
  readonly core: number;
  readonly wide: number;
  readonly wideBlurPx: number;
  readonly tail: number;
}

/** Value, slope by x, by a, by logBlur, by tail. */
const out = new Float64Array(5);
const core = new Float64Array(4);
const wide = new Float64Array(4);

/**
 * The model's values across one row and, if asked, their derivatives: for each x one by each part, then one by each global.
 * `deficit` is what the blur of the beam takes from m at each x (see `deficitOf`); `smear` what a cell's own extent adds
 * to the blur, as a variance in pixels squared.
 */
export function rowModel(
  p: Float64Array,
  globals: Float64Array,
  deficit: Float64Array,
  smear: number,
  x: Float64Array,
  value: Float64Array,
  slope: Float64Array,
): void {
  const kernel = kernelOf(globals, smear);
  const shadows = shadowsOf(p, kernel);
  const unknowns = p.length + GLOBAL_COUNT;
  const co = p[PART.co]!;
  const ao = p[PART.ao]!;
  const ho = p[PART.ho]!;
  const b1 = p[PART.b1]!;
  const b2 = p[PART.b2]!;
  const b3 = p[PART.b3]!;
  const k = globals[2]! / ho;
  for (let i = 0; i < x.length; i++) {
    const at = i * unknowns;
    const g = at + p.length;
    slope.fill(0, at, at + unknowns);
    let m = deficit[i]!;
    for (const s of shadows) {
      tailedAt(s, x[i]! - s.shadow.centre, kernel);
      const h = s.shadow.height;
      m += h * out[0]!;
      slope[at + s.centre]! -= h * out[1]!;
      slope[at + s.half]! += h * out[2]! * s.share;
      slope[at + s.height]! += s.sign * out[0]!;
      slope[g]! += h * out[3]!;
      slope[g + 1]! += h * out[4]!;
    }
    const u = (x[i]! - co) / ao;
    value[i] = p[PART.b0]! + (b1 + (b2 + b3 * u) * u) * u + m - k * m * m;
    // the compression acts on all that m depends on
    const f = 1 - 2 * k * m;
    for (let j = 0; j < unknowns; j++) slope[at + j]! *= f;
    const base = (b1 + (2 * b2 + 3 * b3 * u) * u) / ao;
    slope[at + PART.co]! -= base;
    slope[at + PART.ao]! -= base * u;
    slope[at + PART.ho]! += (k * m * m) / ho;
    slope[at + PART.b0] = 1;
    slope[at + PART.b1] = u;
    slope[at + PART.b2] = u * u;
    slope[at + PART.b3] = u * u * u;
    slope[g + 2] = (-m * m) / ho;
  }
}

/** What blur, which acts on the beam and not on its logarithm, takes from the shadows at each x. */
export function deficitOf(
  p: Float64Array,
  globals: Float64Array,
  unitsPerLog: number,
  smear: number,
  x: Float64Array,
): Float64Array {
  const kernel = kernelOf(globals, smear);
  const shadows = shadowsOf(p, kernel).map((s) => s.shadow);
  return x.map(blurDeficit(shadows, kernel, unitsPerLog));
}

function kernelOf(globals: Float64Array, smear: number): Kernel {
  const blurPx = Math.exp(globals[0]!);
  const wideBlurPx = evidence('imaging.blur.tail-ratio') * blurPx;
  return {
    blurPx,
    wideBlurPx,
    core: Math.sqrt(blurPx ** 2 + smear),
    wide: Math.sqrt(wideBlurPx ** 2 + smear),
    tail: globals[1]!,
  };
}

function shadowsOf(p: Float64Array, kernel: Kernel): Blurred[] {
  const one = (centre: number, half: number, height: number, sign: 1 | -1, share = 1): Blurred => {
    const a = share * p[half]!;
    return {
      shadow: { centre: p[centre]!, half: a, height: sign * p[height]! },
      core: blurredHalfEllipse(a, kernel.core),
      wide: blurredHalfEllipse(a, kernel.wide),
      centre,
      half,
      height,
      share,
      sign,
    };
  };
  const main = [one(PART.co, PART.ao, PART.ho, 1), one(PART.ci, PART.ai, PART.hi, -1)];
  if (p.length === ALONE) return main;
  return [...main, one(PART.c2, PART.a2, PART.h2, 1), one(PART.c2, PART.a2, PART.i2, -1, SECOND_CANAL)];
}

function tailedAt(s: Blurred, x: number, kernel: Kernel): void {
  shadowAt(s.core, x, core);
  shadowAt(s.wide, x, wide);
  for (let k = 0; k < 3; k++) out[k] = core[k]! + kernel.tail * (wide[k]! - core[k]!);
  const coreRate = kernel.blurPx ** 2 / kernel.core;
  const wideRate = kernel.wideBlurPx ** 2 / kernel.wide;
  out[3] = (1 - kernel.tail) * core[3]! * coreRate + kernel.tail * wide[3]! * wideRate;
  out[4] = wide[0]! - core[0]!;
}
