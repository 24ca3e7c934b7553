/** What a film's thread tells the page. */
import type { Film, NamedLook } from '@bonewright/film';

/** A film without its values: those stay in its thread. */
export type FilmFacts = Omit<Film, 'pixels' | 'grey'> & {
  readonly sha256: string;
  /** Ways to look at it, the one to open with first. */
  readonly looks: readonly NamedLook[];
  /** Lowest and highest value that a window can be laid over. */
  readonly levels: readonly [number, number];
};

/** An answer, or why there is none, in the words of bad input. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly what: string; readonly path: string; readonly hint: string };

/** A part of a film, in whole pixels; right and bottom are not in it. */
export interface Region {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
