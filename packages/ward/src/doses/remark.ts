/** Something said of a dose: to know, or a stop that asks for a reason, for a second person, or for a change. */
import type { DoseFigure } from '@bonewright/evidence';

/** In the order of worry. */
export const NEEDS = ['nothing', 'reason', 'second person', 'change'] as const;
export type Needs = (typeof NEEDS)[number];

export interface Remark {
  /** For ever: answers are kept by it. */
  readonly code: string;
  readonly words: string;
  readonly needs: Needs;
}

export const says = (code: string, words: string): Remark => ({ code, words, needs: 'nothing' });
export const asks = (code: string, words: string): Remark => ({ code, words, needs: 'reason' });
export const asksSecond = (code: string, words: string): Remark => ({ code, words, needs: 'second person' });
export const refuses = (code: string, words: string): Remark => ({ code, words, needs: 'change' });

/** `0.02-0.05` or `5`, without unit. */
export const rangeWords = ({ low, high }: Pick<DoseFigure, 'low' | 'high'>): string =>
  low === high ? String(low) : `${low}-${high}`;
