/** Condition of a hedgehog from two girths of the curled animal. */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';

export interface Girths {
  /** Round the middle of the curled animal. */
  readonly middleMm: number;
  /** From head to tail, round the curled animal. */
  readonly headToTailMm: number;
  /** With a frame on it may not curl, and the index means nothing. */
  readonly hasFrame: boolean;
}

export interface ConditionIndex {
  /** Null where it cannot be used. */
  readonly index: number | null;
  readonly because: string;
}

/** Girth round the middle over girth from head to tail, and what may be said of it. Throws InputError for a girth of nothing. */
export function conditionIndex({ middleMm, headToTailMm, hasFrame }: Girths): ConditionIndex {
  if (!(middleMm > 0 && headToTailMm > 0))
    throw new InputError('a girth is more than nothing', 'girths', 'measure both round the curled animal');
  if (hasFrame)
    return {
      index: null,
      because: 'With a frame on it may not curl tightly: the index cannot be used until frame off.',
    };
  const index = middleMm / headToTailMm;
  const [published, band] = [value('release.hedgehog.condition-index'), value('release.hedgehog.condition-normal')];
  if (index >= published) return { index, because: `At or over the published ${published}.` };
  if (index >= band)
    return {
      index,
      because: `Between ${band}, where one rescue's normal band begins, and the published ${published}.`,
    };
  return { index, because: `Under the published ${published} and under one rescue's ${band}.` };
}
