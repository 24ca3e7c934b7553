/** A film through a window or a table to bytes of a screen: one lookup for each pixel, 16 bits up to the last step. */
import { InputError } from '@bonewright/fault';
import type { Film, GreyImage, LookupTable } from '../model/film.ts';
import { lookedUp, modalityValue, type VoiFunction, type Window, windowed } from './voi.ts';

/** How the user looks at a film: through a window (in modality values) or one of the film's own tables. */
export type Look = (
  | { readonly kind: 'window'; readonly window: Window; readonly voiFunction: VoiFunction }
  | { readonly kind: 'table'; readonly table: LookupTable }
) & {
  /** White and black swapped by the user, on top of what the film asks for. */
  readonly swapped?: boolean;
};

const WHITE = 255;
const OPAQUE = 0xff000000;
const STORED_VALUES = 65536;

/**
 * Fills `target` with `rows * cols` grey bytes, or with four times as many of RGBA (opaque).
 * Values are shown as the film asks (PS3.3 C.11.1, C.11.2, C.11.6), MONOCHROME1 white for low.
 * @throws InputError where the target is of another size.
 */
export function windowToBytes(image: GreyImage, look: Look, target: Uint8ClampedArray | Uint8Array): void {
  const { pixels } = image;
  const count = image.rows * image.cols;
  if (target.length !== count && target.length !== 4 * count)
    throw new InputError(
      `the target holds ${target.length} bytes, the film has ${count} pixels`,
      'target',
      'size it to the film',
    );
  const level = levelOf(image, look);
  const isGrey = target.length === count;
  if (pixels instanceof Float32Array) {
    for (let i = 0; i < count; i++) writePixel(target, i, isGrey, level(pixels[i]!));
    return;
  }
  const levels = allLevels(pixels, level);
  if (isGrey) {
    for (let i = 0; i < count; i++) target[i] = levels[pixels[i]! & (STORED_VALUES - 1)]!;
    return;
  }
  // Grey in all three colours and opaque: the same number whichever end of the word comes first, but for the alpha.
  const words = new Uint32Array(STORED_VALUES);
  for (let i = 0; i < STORED_VALUES; i++) words[i] = (levels[i]! * 0x010101) | OPAQUE;
  const out = new Uint32Array(target.buffer, target.byteOffset, count);
  for (let i = 0; i < count; i++) out[i] = words[pixels[i]! & (STORED_VALUES - 1)]!;
}

function writePixel(target: Uint8ClampedArray | Uint8Array, i: number, isGrey: boolean, value: number): void {
  if (isGrey) target[i] = value;
  else {
    target.fill(value, 4 * i, 4 * i + 3);
    target[4 * i + 3] = WHITE;
  }
}

/** The level, 0 to 255, of every stored value, by its lowest 16 bits. */
function allLevels(pixels: Film['pixels'], level: (stored: number) => number): Uint8Array {
  const levels = new Uint8Array(STORED_VALUES);
  const isSigned = pixels instanceof Int8Array || pixels instanceof Int16Array;
  const from = isSigned ? -STORED_VALUES / 2 : 0;
  const bits = 8 * pixels.BYTES_PER_ELEMENT;
  const [first, last] = bits === 16 ? [from, from + STORED_VALUES] : isSigned ? [-128, 128] : [0, 256];
  for (let stored = first; stored < last; stored++) levels[stored & (STORED_VALUES - 1)] = level(stored);
  return levels;
}

function levelOf({ photometric, grey }: GreyImage, look: Look): (stored: number) => number {
  const modality = grey ?? { slope: 1, intercept: 0 };
  const filmSwaps = photometric === 'MONOCHROME1' || grey?.presentationInverse === true;
  const isSwapped = filmSwaps !== (look.swapped ?? false);
  const shown = (stored: number): number => {
    const x = modalityValue(modality, stored);
    if (look.kind === 'window') return windowed(look.voiFunction, look.window, x);
    return (lookedUp(look.table, x) * WHITE) / (2 ** look.table.bits - 1);
  };
  return (stored) => Math.round(isSwapped ? WHITE - shown(stored) : shown(stored));
}
