/** One input that may be off: its name in words, where its spread comes from, and how it moves a construct's figures. */
import { value } from '@bonewright/evidence';
import type { Figures } from '../model/figures.ts';
import type { Draft } from './draft.ts';
import { factorOf } from './spread.ts';

export interface Input {
  readonly words: string;
  /** Evidence id of its spread; null where the case itself states it. */
  readonly evidence: string | null;
  /** Moves a draft by that many standard deviations. */
  readonly move: (draft: Draft, z: number) => void;
}

/** An input whose value is multiplied by a draw from an entry's range. */
export const scaledBy = (words: string, id: string, apply: (figures: Figures, factor: number) => void): Input => ({
  words,
  evidence: id,
  move: ({ figures }, z) => apply(figures, factorOf(id, z)),
});

/** An input that is off by some mm, or some share, whose standard deviation is an entry's value. */
export const offBy = (words: string, id: string, apply: (figures: Figures, off: number) => void): Input => ({
  words,
  evidence: id,
  move: ({ figures }, z) => apply(figures, z * value(id)),
});
