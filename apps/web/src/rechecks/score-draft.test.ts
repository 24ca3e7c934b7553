import { describe, expect, test } from 'vitest';
import { readScoreDraft, scoreOfKey, wholeScores } from './score-draft.ts';

describe('a score by key', () => {
  test.each([
    ['1', 4, 1],
    ['4', 4, 4],
    ['4', 3, undefined],
    ['0', 3, null],
    ['x', 3, undefined],
    [' ', 4, undefined],
    ['12', 4, undefined],
    ['Tab', 4, undefined],
  ])('%s on a scale of %d says %s', (key, grades, score) => {
    expect(scoreOfKey(key, grades)).toBe(score);
  });
});

describe('what was half given', () => {
  test('is whole only when all four are decided; not seen is a decision', () => {
    expect(wholeScores({ medial: 1, lateral: 2, cranial: 3 })).toBeNull();
    expect(wholeScores({ medial: 1, lateral: 2, cranial: 3, caudal: null })).toEqual({
      medial: 1,
      lateral: 2,
      cranial: 3,
      caudal: null,
    });
  });
  test('comes back from the device without what is no score', () => {
    expect(readScoreDraft({ medial: 2, lateral: null, cranial: 'x', other: 3 })).toEqual({ medial: 2, lateral: null });
    for (const kept of [null, 3, 'a', []]) expect(readScoreDraft(kept)).toEqual({});
  });
});
