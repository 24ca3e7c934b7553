/** A metal rod on a film: expected, found, or not found and why. Pixels. */
import type { Pixel } from '../model/trace.ts';

/** Where a rod is expected: from its near (outer) end to its tip. */
export interface ExpectedRod {
  readonly name: string;
  readonly near: Pixel;
  readonly tip: Pixel;
  readonly widthPx: number;
}

/** A point of the found rod with its sd along the rod; null where its end is not seen, and why. */
export interface RodEnd {
  readonly place: Pixel | null;
  readonly sdPx: number | null;
  readonly why?: string;
}

export interface FoundRod {
  readonly name: string;
  /** Centre line over the stretch that was expected, near end first. */
  readonly line: readonly [Pixel, Pixel];
  /** Sd of the line across at its middle, and of its direction. */
  readonly acrossSdPx: number;
  readonly directionSdDeg: number;
  /** Null where the rod is so thin on this film that its blur is what is seen. */
  readonly widthPx: number | null;
  readonly widthSdPx: number | null;
  readonly near: RodEnd;
  readonly tip: RodEnd;
}

/** Not found, and why. */
export interface NoRod {
  readonly name: string;
  readonly why: string;
}

export const isFound = (rod: FoundRod | NoRod): rod is FoundRod => 'line' in rod;
