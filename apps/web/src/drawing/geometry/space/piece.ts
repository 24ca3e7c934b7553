/** A short piece of the drawing in space: what it hides, its edges, and how near it lies. */
import type { Flat } from './eye.ts';

export type PieceOf = 'bone' | 'canal' | 'corridor' | 'skin' | 'pin' | 'column' | 'im';

export interface Piece {
  readonly of: PieceOf;
  /** Which pin, which fragment. */
  readonly index: number;
  /** Larger is nearer. */
  readonly depth: number;
  /** Where along the bone its middle lies. */
  readonly alongMm: number;
  /** What it hides. */
  readonly face: readonly Flat[];
  /** Its edges. */
  readonly lines: readonly (readonly Flat[])[];
  /** A ring across it, drawn lighter; empty for most. */
  readonly ring: readonly Flat[];
  /** A round end: its radii along and across `tiltDeg`. */
  readonly disc: { readonly centre: Flat; readonly radii: Flat; readonly tiltDeg: number } | null;
}

export const BARE: Pick<Piece, 'face' | 'lines' | 'ring' | 'disc'> = { face: [], lines: [], ring: [], disc: null };
