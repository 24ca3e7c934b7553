/** Figures in sentences. */

export const inMm = (mm: number): string => `${mm.toFixed(1)} mm`;
export const inPercent = (percent: number): string => `${percent.toFixed(0)} %`;
export const inGrams = (g: number): string => `${g.toFixed(1)} g`;
export const inDegrees = (deg: number): string => `${deg.toFixed(0)} degrees`;

/** Share as a percentage that never reads as the limit it crosses: one decimal below ten. */
export const inFinePercent = (percent: number): string => `${percent.toFixed(1)} %`;

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** `three pins`, `one pin`, `no pin`. */
export function counted(count: number, thing: string): string {
  const word = SMALL[count] ?? String(count);
  return `${word} ${thing}${count === 1 || count === 0 ? '' : 's'}`;
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** `P3`: pins are numbered from one in the order given. */
export const pinName = (index: number): string => `P${index + 1}`;

interface SomePin {
  readonly diameterMm: number;
  readonly kind: 'smooth' | 'threaded-end' | 'threaded-centre' | 'needle';
  readonly gauge?: number | undefined;
}

/** `0.9 mm wire`, `19 G needle`, `2.0 mm threaded pin`: drawer ids are anybody's. */
export function pinWords({ diameterMm, kind, gauge }: SomePin): string {
  if (kind === 'needle' && gauge !== undefined) return `${gauge} G needle`;
  return `${diameterMm.toFixed(1)} mm ${kind.startsWith('threaded') ? 'threaded pin' : 'wire'}`;
}
