/** How a film is looked at: one of its looks, or a window set by hand. */
import type { Look, NamedLook, Window } from '@bonewright/film';

export interface Looking {
  /** Name of a look of the film; null where the window was set by hand. */
  readonly preset: string | null;
  readonly look: Look;
}

export function openingLook(looks: readonly NamedLook[]): Looking {
  const [first] = looks;
  if (!first) throw new Error('a film offers at least one look');
  return { preset: first.name, look: first.look };
}

export const swapped = (looking: Looking): Looking => ({
  ...looking,
  look: { ...looking.look, swapped: !looking.look.swapped },
});

/** The same look under another name, its swap kept. */
export const chosen = (looking: Looking, { name, look }: NamedLook): Looking => ({
  preset: name,
  look: { ...look, swapped: looking.look.swapped ?? false },
});

/** The window now in use; a table has none, so the film's own fitted one stands in. */
export function windowOf({ look }: Looking, looks: readonly NamedLook[]): Window {
  if (look.kind === 'window') return look.window;
  const fitted = looks.map((named) => named.look).find((other) => other.kind === 'window');
  return fitted?.kind === 'window' ? fitted.window : { centre: 0, width: 1 };
}

export const withWindow = (looking: Looking, window: Window): Looking => ({
  preset: null,
  look: {
    kind: 'window',
    window: { centre: window.centre, width: Math.max(1, window.width) },
    voiFunction: looking.look.kind === 'window' ? looking.look.voiFunction : 'LINEAR',
    swapped: looking.look.swapped ?? false,
  },
});

/** Across changes how much contrast, up and down how bright; a plate's width is about four windows. */
const WINDOW_PER_PX = 1 / 256;

/** The window after a drag by so many screen pixels. */
export function dragged(looking: Looking, looks: readonly NamedLook[], dx: number, dy: number): Looking {
  const window = windowOf(looking, looks);
  return withWindow(looking, {
    centre: window.centre + window.width * dy * WINDOW_PER_PX,
    width: window.width * 2 ** (dx * 4 * WINDOW_PER_PX),
  });
}
