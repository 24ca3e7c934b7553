/** What a user says of a trace: this edge lies here, or this station is not to be believed. */
import type { Pixel } from '../model/trace.ts';

/** Which wall: left is the first of a station's pair of `walls`, right the second. */
export const WALL_SIDES = ['outer-left', 'outer-right', 'canal-left', 'canal-right'] as const;
export type WallSide = (typeof WALL_SIDES)[number];

/** The edge of that station lies at the level of `place` across the bone; how far along it was dragged does not count. */
export interface EdgePlaced {
  /** Name of the traced segment. */
  readonly segment: string;
  /** The station nearest to this is meant. */
  readonly sMm: number;
  readonly side: WallSide;
  readonly place: Pixel;
}

/** The station is left out of everything. */
export interface StationLeftOut {
  readonly segment: string;
  readonly sMm: number;
  readonly exclude: true;
}

export type Correction = EdgePlaced | StationLeftOut;

export const isLeftOut = (c: Correction): c is StationLeftOut => 'exclude' in c;

/** Why a station that was left out says nothing. */
export const LEFT_OUT = 'left out by hand';
