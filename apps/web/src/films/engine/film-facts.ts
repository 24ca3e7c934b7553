/** What a film's thread tells the page. */
import type { Corners, Film, Look, NamedLook, Region } from '@bonewright/film';

/** A film without its values: those stay in its thread. */
export type FilmFacts = Omit<Film, 'pixels' | 'grey'> & {
  /** Ways to look at it, the one to open with first. */
  readonly looks: readonly NamedLook[];
  /** Lowest and highest value that a window can be laid over. */
  readonly levels: readonly [number, number];
};

export interface SquareWish {
  readonly corners: Corners;
  readonly filmMm: { readonly widthMm: number; readonly heightMm: number };
}

/** A part of a film to be painted, with every pixel (level 0), half as many each way (1), a quarter (2) and so on. */
export interface PartWish {
  readonly look: Look;
  readonly level: number;
  /** In pixels of that level. */
  readonly region: Region;
}
