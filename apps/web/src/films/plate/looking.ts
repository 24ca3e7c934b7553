/** How films are looked at: one of a film's looks, shifted and widened by hand in shares of its own window. */
import type { Look, NamedLook, Window } from '@bonewright/film';

/** Says nothing of any one film, so that two can share it. */
export interface Levels {
  /** Name of a look; null for the one that suits the film best. */
  readonly preset: string | null;
  /** How far the window was shifted, in widths of the look's own. */
  readonly shift: number;
  /** How many times wider it was made. */
  readonly factor: number;
  readonly isSwapped: boolean;
}

export const AS_OPENED: Levels = { preset: null, shift: 0, factor: 1, isSwapped: false };

/** What a film can offer; there is always one look at least. */
export interface Offered {
  readonly looks: readonly NamedLook[];
  /** The look that suits it best. */
  readonly best: NamedLook;
}

export interface Looking {
  /** The name of the look; null where the window was set by hand. */
  readonly name: string | null;
  readonly look: Look;
  /** The window now in use. */
  readonly window: Window;
}

/** The look of one film at these levels. */
export function lookedAt(levels: Levels, offered: Offered): Looking {
  const { shift, factor, isSwapped } = levels;
  const { name, look } = baseOf(levels, offered);
  const own = windowOf(look, offered);
  const window = { centre: own.centre + shift * own.width, width: Math.max(1, own.width * factor) };
  if (shift === 0 && factor === 1) return { name, look: { ...look, swapped: isSwapped }, window };
  const voiFunction = look.kind === 'window' ? look.voiFunction : 'LINEAR';
  return { name: null, look: { kind: 'window', window, voiFunction, swapped: isSwapped }, window };
}

const baseOf = ({ preset }: Levels, { looks, best }: Offered): NamedLook =>
  looks.find(({ name }) => name === preset) ?? best;

/** A table has no window, so the film's own fitted one stands in. */
function windowOf(look: Look, { looks }: Offered): Window {
  if (look.kind === 'window') return look.window;
  const fitted = looks.map((named) => named.look).find((other) => other.kind === 'window');
  return fitted?.kind === 'window' ? fitted.window : { centre: 0, width: 1 };
}

export const swapped = (levels: Levels): Levels => ({ ...levels, isSwapped: !levels.isSwapped });

/** Another look, its swap kept. */
export const chosen = (levels: Levels, { name }: NamedLook): Levels => ({
  ...AS_OPENED,
  preset: name,
  isSwapped: levels.isSwapped,
});

/** Levels that give a film this window. */
export function withWindow(levels: Levels, offered: Offered, { centre, width }: Window): Levels {
  const own = windowOf(baseOf(levels, offered).look, offered);
  return { ...levels, shift: (centre - own.centre) / own.width, factor: Math.max(1, width) / own.width };
}

/** Across changes how much contrast, up and down how bright; a plate's width is about four windows. */
const WINDOW_PER_PX = 1 / 256;

/** The levels after a drag by so many screen pixels. */
export const dragged = (levels: Levels, dx: number, dy: number): Levels => ({
  ...levels,
  shift: levels.shift + levels.factor * dy * WINDOW_PER_PX,
  factor: levels.factor * 2 ** (dx * 4 * WINDOW_PER_PX),
});
