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
/** What stands out past an end for less than this is the corner of a crossing rod. */
const GOES_ON_WIDTHS = 0.4;
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
  const rows = Array.from({ length: count }, (_, i) => {
    const mean = (low: number, high: number) => meanAcross(signal, from + i * STEP_PX, low * widthPx, high * widthPx);
    return { core: mean(-CORE, CORE), sides: [mean(-BESIDE[1], -BESIDE[0]), mean(BESIDE[0], BESIDE[1])] as const };
  });
  // over the brighter side: a rod that crosses aslant just past the end does not lengthen this one
  const contrast = rows.map((r) => r.core - Math.max(...r.sides));
  const middle = Math.round((frame.lengthPx / 2 - from) / STEP_PX);
  const reach = Math.round(frame.lengthPx / 3 / STEP_PX);
  const along = <T>(list: readonly T[]) => list.slice(middle - reach, middle + reach);
  const plateau = along(contrast).filter(Number.isFinite);
  const level = quantile(plateau, 1 / 2);
  const noise =
    1.4826 *
    quantile(
      plateau.map((c) => Math.abs(c - level)),
      1 / 2,
    );
  const runs = {
    half: level / 2,
    lasts: Math.round(lasts / STEP_PX),
    goesOn: Math.ceil((GOES_ON_WIDTHS * widthPx) / STEP_PX),
  };
  const core = rows.map((r) => r.core);
  const metal = quantile(along(core), 1 / 2) - level / 2;
  const end = (step: 1 | -1): RodEnd => {
    const at = lastAbove(contrast, middle, step, runs);
    if (typeof at === 'string') return { place: null, sdPx: null, why: at };
    const fall = Math.abs(contrast[Math.floor(at) + 2]! - contrast[Math.floor(at) - 1]!) / (3 * STEP_PX);
    const hiddenPx = STEP_PX * hiddenPast(core, at, step, metal);
    const sdPx = Math.hypot(FLOOR_PX, TIP_SD_WIDTHS * widthPx, noise / fall, hiddenPx / Math.sqrt(12));
    return { place: pointAt(frame, from + at * STEP_PX + (step * hiddenPx) / 2, 0), sdPx };
  };
  return { near: end(-1), tip: end(1) };
}

/** Samples past an end over which metal goes on: a crossing rod, and the end may lie anywhere under it. */
function hiddenPast(core: readonly number[], at: number, step: 1 | -1, metal: number): number {
  const first = step > 0 ? Math.ceil(at) + 1 : Math.floor(at) - 1;
  let i = first;
  while (i >= 0 && i < core.length && core[i]! > metal) i += step;
  return Math.abs(i - first);
}

interface Runs {
  /** The rod's level, halved. */
  readonly half: number;
  /** Samples below that make an end, and samples above that make the rod go on. */
  readonly lasts: number;
  readonly goesOn: number;
}

/** Index (between samples) of the last of the rod, going outwards; or why none. */
function lastAbove(values: readonly number[], start: number, step: 1 | -1, runs: Runs): number | string {
  let solid = start;
  let above = runs.goesOn;
  for (let i = start; i >= 0 && i < values.length; i += step) {
    const here = values[i]!;
    if (Number.isNaN(here)) return 'it runs off the film';
    above = here < runs.half ? 0 : above + 1;
    if (above >= runs.goesOn) solid = i;
    if (Math.abs(i - solid) < runs.lasts) continue;
    const [inside, outside] = [values[solid]!, values[solid + step]!];
    return solid + step * ((inside - runs.half) / (inside - outside));
  }
  return 'it runs on beyond where its end was expected';
}
