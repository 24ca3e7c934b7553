/** Scores of one visit while they are given: recorded once every cortex has its score or is said not to be seen. */
import { CORTICES, type Cortex } from '@bonewright/film';

/** Undecided cortices are absent; null is "not seen". */
export type ScoreDraft = Partial<Readonly<Record<Cortex, number | null>>>;
export type Scores = Readonly<Record<Cortex, number | null>>;

/** What a key says on a cortex: its score, null for not seen, undefined where it is no key of the scale. */
export function scoreOfKey(key: string, grades: number): number | null | undefined {
  if (key === '0') return null;
  const score = Number(key);
  return Number.isInteger(score) && score >= 1 && score <= grades && key.length === 1 ? score : undefined;
}

export function readScoreDraft(kept: unknown): ScoreDraft {
  if (typeof kept !== 'object' || kept === null) return {};
  const pairs = Object.entries(kept).filter(
    ([cortex, score]: [string, unknown]) =>
      CORTICES.some((known) => known === cortex) && (score === null || Number.isInteger(score)),
  );
  return Object.fromEntries(pairs);
}

/** All four, or null while one is undecided. */
export function wholeScores({ medial, lateral, cranial, caudal }: ScoreDraft): Scores | null {
  if (medial === undefined || lateral === undefined || cranial === undefined || caudal === undefined) return null;
  return { medial, lateral, cranial, caudal };
}
