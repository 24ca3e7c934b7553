/** The one log axis of every margin bar, so that bars compare down the column. */
import { FAILS, WATCH } from './verdict.ts';

const LOW = 0.5;
const HIGH = 6;

/** Marks below the bars, their words and what they stand for. */
export const AXIS_MARKS = [
  { at: 0.5, word: '0.5', kind: 'plain' },
  { at: 0.7, word: '0.7', kind: 'plain' },
  { at: FAILS, word: 'fails 1', kind: 'stop' },
  { at: WATCH, word: '1.5', kind: 'watch' },
  { at: 2, word: '2', kind: 'plain' },
  { at: 3, word: '3', kind: 'plain' },
  { at: 4, word: '4', kind: 'plain' },
  { at: 6, word: '6', kind: 'plain' },
] as const;

/** Place on the axis in per cent of its width, held at its ends. */
export function onAxis(margin: number): number {
  const share = Math.log(Math.max(margin, Number.MIN_VALUE) / LOW) / Math.log(HIGH / LOW);
  return Math.min(1, Math.max(0, share)) * 100;
}

export const isOffAxis = (margin: number): boolean => margin < LOW || margin > HIGH;
