import { expect, test } from 'vitest';
import { testConstruct } from '../test-case.ts';
import { movePinTo } from './edits.ts';
import { step } from './use-history.ts';

const start = { past: [], present: testConstruct, future: [], stroke: null };
const moved = (mm: number) => movePinTo(testConstruct, 0, mm, 52);
type History = Parameters<typeof step>[0];
const change = (history: History, mm: number, stroke: string | null) =>
  step(history, { kind: 'change', construct: moved(mm), stroke });

test('a whole drag is one step back', () => {
  const dragged = [8.1, 8.5, 9].reduce((history, mm) => change(history, mm, 'move 0'), start as History);
  expect(step(dragged, { kind: 'undo' }).present).toBe(testConstruct);
});

test('two drags with a rest between are two steps back', () => {
  const first = step(change(start, 9, 'move 0'), { kind: 'rest' });
  const second = change(first, 10, 'move 0');
  const back = step(second, { kind: 'undo' });
  expect(back.present?.pins[0]?.sMm).toBe(9);
  expect(step(back, { kind: 'redo' }).present?.pins[0]?.sMm).toBe(10);
});

test('a new change after undo forgets what was undone', () => {
  const undone = step(change(start, 9, null), { kind: 'undo' });
  expect(step(change(undone, 7, null), { kind: 'redo' }).present?.pins[0]?.sMm).toBe(7);
});

test('undo without end: back through five hundred changes to the first', () => {
  let history: History = start;
  for (let i = 1; i <= 500; i += 1) history = change(history, i / 10, null);
  for (let i = 0; i < 500; i += 1) history = step(history, { kind: 'undo' });
  expect(history.present).toBe(testConstruct);
});

test('a pin dragged past another takes its number when the hand rests, and one step back undoes the drag', () => {
  const rested = step(change(start, 25, 'move 0'), { kind: 'rest' });
  expect(rested.present?.pins.map((pin) => pin.sMm)).toEqual([20, 25, 31, 43]);
  expect(step(rested, { kind: 'undo' }).present).toBe(testConstruct);
});

test('what another page recorded can be undone here too', () => {
  const history = step(start, { kind: 'from outside', construct: moved(12) });
  expect(step(history, { kind: 'undo' }).present).toBe(testConstruct);
});
