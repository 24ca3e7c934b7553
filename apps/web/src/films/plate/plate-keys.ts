/** What a key does on a plate that has the focus. */
import type { Target } from '../marks/target.ts';

export type PlateAct =
  | { readonly kind: 'step'; readonly dx: number; readonly dy: number }
  | { readonly kind: 'place' }
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'whole' }
  | { readonly kind: 'swap' }
  | { readonly kind: 'turn' }
  | { readonly kind: 'flip' }
  | { readonly kind: 'put-away' }
  | { readonly kind: 'target'; readonly target: Target };

interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
}

const ZOOM_STEP = Math.SQRT2;
const FAR_STEP = 8;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const CLICKS: Readonly<Record<string, Target>> = { 1: 'click-1', 2: 'click-2', 3: 'click-3', 4: 'click-4' };

/** Null where the key is not the plate's. Steps are in screen pixels. */
export function plateKey({ key, shiftKey }: Key): PlateAct | null {
  const arrow = ARROWS[key];
  if (arrow) {
    const size = shiftKey ? 1 : FAR_STEP;
    return { kind: 'step', dx: arrow[0] * size, dy: arrow[1] * size };
  }
  switch (key.toLowerCase()) {
    case 'enter':
      return { kind: 'place' };
    case '+':
    case '=':
      return { kind: 'zoom', factor: ZOOM_STEP };
    case '-':
      return { kind: 'zoom', factor: 1 / ZOOM_STEP };
    case '0':
      return { kind: 'whole' };
    case 'i':
      return { kind: 'swap' };
    case 'r':
      return { kind: 'turn' };
    case 'h':
      return { kind: 'flip' };
    case 'escape':
      return { kind: 'put-away' };
    case 'b':
      return { kind: 'target', target: 'ball' };
    case 'f':
      return { kind: 'target', target: 'fracture-1' };
    default: {
      const target = CLICKS[key];
      return target ? { kind: 'target', target } : null;
    }
  }
}
