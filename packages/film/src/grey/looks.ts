/** The ways a film offers to look at it, the first being the one to open with. */
import type { GreyImage } from '../model/film.ts';
import type { Look } from './display.ts';
import { modalityValue, type Window } from './voi.ts';

export interface NamedLook {
  readonly name: string;
  readonly look: Look;
}

/** Share of the pixels that may lie beyond each end of a suggested window. */
const CLIPPED = 0.005;
/** A value at the end of the range that more pixels than this share is surround or saturation, not picture. */
const SURROUND = 0.01;

/** Windows and tables of the file in its order, then the window found from the picture itself. */
export function looksOf(image: GreyImage): NamedLook[] {
  const { windows = [], voiTables = [], voiFunction = 'LINEAR' } = image.grey ?? {};
  return [
    ...windows.map(({ name, ...window }): NamedLook => ({ name, look: { kind: 'window', window, voiFunction } })),
    ...voiTables.map((table): NamedLook => ({ name: table.name, look: { kind: 'table', table } })),
    { name: 'fitted to the picture', look: { kind: 'window', window: suggestWindow(image), voiFunction: 'LINEAR' } },
  ];
}

/** A LINEAR window over all but the rarest values, in modality values; surround and padding do not count. */
export function suggestWindow(image: GreyImage): Window {
  const values = sortedSample(image);
  const kept = withoutSurround(values);
  const at = (share: number): number =>
    modalityValue(image.grey ?? { slope: 1, intercept: 0 }, kept[Math.round(share * (kept.length - 1))] ?? 0);
  const [a, b] = [at(CLIPPED), at(1 - CLIPPED)];
  return { centre: (a + b) / 2 + 0.5, width: Math.abs(b - a) + 1 };
}

const MOST_SAMPLED = 2 ** 16;

/** Stored values of evenly spaced pixels, smallest first; a step that no picture's width is a multiple of. */
function sortedSample({ pixels, grey }: GreyImage): Float32Array {
  const step = Math.max(1, Math.floor(pixels.length / MOST_SAMPLED)) | 1;
  const sample = new Float32Array(Math.ceil(pixels.length / step));
  let count = 0;
  for (let i = 0; i < pixels.length; i += step) if (pixels[i] !== grey?.padding) sample[count++] = pixels[i]!;
  return sample.subarray(0, count).sort();
}

function withoutSurround(sorted: Float32Array): Float32Array {
  const lowest = sorted[0];
  const highest = sorted.at(-1);
  if (lowest === undefined || highest === undefined || lowest === highest) return sorted;
  const lows = sorted.findIndex((v) => v !== lowest);
  const highs = sorted.length - sorted.indexOf(highest);
  const few = SURROUND * sorted.length;
  const kept = sorted.subarray(lows > few ? lows : 0, highs > few ? sorted.length - highs : sorted.length);
  return kept.length > 0 ? kept : sorted;
}
