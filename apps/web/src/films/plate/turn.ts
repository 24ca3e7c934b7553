/** How a film is turned on the screen: to be looked at only, its pixels and everything marked on them stay as they are. */
import type { Pixel } from '@bonewright/film';

export interface Turn {
  /** Left and right swapped, before it is turned. */
  readonly isFlipped: boolean;
  /** Clockwise. */
  readonly quarters: 0 | 1 | 2 | 3;
}

export const STRAIGHT: Turn = { isFlipped: false, quarters: 0 };

/** As seen now, a quarter further clockwise. */
export const quarterOn = ({ isFlipped, quarters }: Turn): Turn => ({ isFlipped, quarters: QUARTERS_AFTER[quarters] });

/** As seen now, left and right swapped. */
export const flipped = ({ isFlipped, quarters }: Turn): Turn => ({
  isFlipped: !isFlipped,
  quarters: QUARTERS_BACK[quarters],
});

const QUARTERS_AFTER = [1, 2, 3, 0] as const;
const QUARTERS_BACK = [0, 3, 2, 1] as const;
const COS = [1, 0, -1, 0] as const;
const SIN = [0, 1, 0, -1] as const;

/** As CSS and SVG write it: film to screen is (a x + c y, b x + d y). */
export function matrixOf({ isFlipped, quarters }: Turn): readonly [a: number, b: number, c: number, d: number] {
  const [cos, sin] = [COS[quarters], SIN[quarters]];
  const side = isFlipped ? -1 : 1;
  return [side * cos, side * sin, -sin, cos];
}

/** A way on the film as a way on the screen. */
export function toScreen(turn: Turn, [x, y]: Pixel): Pixel {
  const [a, b, c, d] = matrixOf(turn);
  return [a * x + c * y, b * x + d * y];
}

/** A way on the screen as a way on the film. */
export function toFilm(turn: Turn, [x, y]: Pixel): Pixel {
  const [a, b, c, d] = matrixOf(turn);
  return [a * x + b * y, c * x + d * y];
}

/** The SVG transform inside a turned film that makes what stands at a place read upright. */
export function uprightAt(turn: Turn, [x, y]: Pixel): string {
  const [a, b, c, d] = matrixOf(turn);
  return `translate(${x} ${y}) matrix(${a} ${c} ${b} ${d} 0 0) translate(${-x} ${-y})`;
}

/** Null where the film lies as it came. */
export function turnWords({ isFlipped, quarters }: Turn): string | null {
  const words = [isFlipped && 'flipped', quarters > 0 && `turned ${quarters * 90}°`].filter(Boolean);
  return words.length > 0 ? words.join(', ') : null;
}
