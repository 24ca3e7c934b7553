/** Which output level a value gets: the three window functions of PS3.3 C.11.2.1, tables of C.11.1 and C.11.2. */
import type { Film, LookupTable } from '../model/film.ts';

export type VoiFunction = Film['grey']['voiFunction'];

export interface Window {
  readonly centre: number;
  /** At least 1 for LINEAR, above 0 for the others. */
  readonly width: number;
}

/** The level of modality value `x` in `low`..`high`. */
export function windowed(kind: VoiFunction, { centre, width }: Window, x: number, low = 0, high = 255): number {
  const span = high - low;
  if (kind === 'SIGMOID') return span / (1 + Math.exp((-4 * (x - centre)) / width)) + low;
  if (kind === 'LINEAR_EXACT') return ramp((x - centre) / width, span, low);
  if (width > 1) return ramp((x - (centre - 0.5)) / (width - 1), span, low);
  return x <= centre - 0.5 ? low : high;
}

/** A straight line over -1/2..1/2, level beyond. */
const ramp = (t: number, span: number, low: number): number => Math.min(1, Math.max(0, t + 0.5)) * span + low;

/** The entry for `x`: below the first the first entry, above the last the last. */
export function lookedUp(table: LookupTable, x: number): number {
  const at = Math.min(table.values.length - 1, Math.max(0, Math.round(x) - table.first));
  return table.values[at] ?? 0;
}

/** Stored value to the value it means: rescale, or the table that stands in for it (PS3.3 C.11.1). */
export function modalityValue(
  grey: Pick<Film['grey'], 'slope' | 'intercept' | 'modalityTable'>,
  stored: number,
): number {
  return grey.modalityTable ? lookedUp(grey.modalityTable, stored) : grey.slope * stored + grey.intercept;
}
