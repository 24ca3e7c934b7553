/** What the next click on a plate is for. */
import type { Pixel } from '@bonewright/film';

export interface Aim {
  /** What is to be clicked, in words. */
  readonly words: string;
  /** Puts it there; what to say of it. */
  readonly place: (at: Pixel) => string;
}
