/** Where a found rod ends along its line: where it stands out half as much as over its length. */
import type { Attenuation } from '../trace/attenuation.ts';
import { type LineFrame, pointAt } from '../trace/frame.ts';
import { meanAcross, metalAbout, quantile } from './metal-signal.ts';
import type { FoundRod, RodEnd } from './rod.ts';

const STEP_PX = 0.5;
/** In rod widths: half-width of the core, and the stretch beside the rod it is compared with. */
const CORE = 0.25;
const BESIDE = [0.9, 1.5] as const;
/** A crossing rod hides this one for a stretch; an end stays one for so many widths. */
const LASTS_WIDTHS = 3;
/** A ground tip fades out over part of a width: sd of the end. */
const TIP_SD_WIDTHS = 0.2;
const FLOOR_PX = 0.3;

/** Both ends, looked for up to `beyondPx` past the line given. */
export function endsOf(
  film: Attenuation,
  frame: LineFrame,
  widthPx: number,
  beyondPx: number,
): Pick<FoundRod, 'near' | 'tip'> {
  const signal = metalAbout(film, frame);
  const lasts = LASTS_WIDTHS * widthPx;
  const from = -beyondPx - lasts;
  const count = Math.ceil((frame.lengthPx - 2 * from) / STEP_PX) + 1;
  const contrast = Array.from({ length: count }, (_, i) => {
    const s = from + i * STEP_PX;
    const mean = (low: number, high: number) => meanAcross(signal, s, low * widthPx, high * widthPx);
    return mean(-CORE, CORE) - (mean(-BESIDE[1], -BESIDE[0]) + mean(BESIDE[0], BESIDE[1])) / 2;
  });
  const middle = Math.round((frame.lengthPx / 2 - from) / STEP_PX);
  const reach = Math.round(frame.lengthPx / 3 / STEP_PX);
  const plateau = contrast.slice(middle - reach, middle + reach).filter(Number.isFinite);
  const level = quantile(plateau, 1 / 2);
  const noise =
    1.4826 *
    quantile(
      plateau.map((c) => Math.abs(c - level)),
      1 / 2,
    );
  const end = (step: 1 | -1): RodEnd => {
    const at = lastAbove(contrast, middle, step, level / 2, Math.round(lasts / STEP_PX));
    if (typeof at === 'string') return { place: null, sdPx: null, why: at };
    const fall = Math.abs(contrast[Math.floor(at) + 2]! - contrast[Math.floor(at) - 1]!) / (3 * STEP_PX);
    const sdPx = Math.hypot(FLOOR_PX, TIP_SD_WIDTHS * widthPx, noise / fall);
    return { place: pointAt(frame, from + at * STEP_PX, 0), sdPx };
  };
  return { near: end(-1), tip: end(1) };
}

/** Index (between samples) from which the values stay below `half` for `lasts` samples, going outwards; or why none. */
function lastAbove(
  values: readonly number[],
  start: number,
  step: 1 | -1,
  half: number,
  lasts: number,
): number | string {
  let below = 0;
  for (let i = start; i >= 0 && i < values.length; i += step) {
    const here = values[i]!;
    if (Number.isNaN(here)) return 'it runs off the film';
    below = here < half ? below + 1 : 0;
    if (below < lasts) continue;
    const first = i - step * (below - 1);
    const inside = values[first - step]!;
    return first - step * ((half - values[first]!) / (inside - values[first]!));
  }
  return 'it runs on beyond where its end was expected';
}
