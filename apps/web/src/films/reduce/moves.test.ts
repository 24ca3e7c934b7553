import { expect, test } from 'vitest';
import { afterAct, type Moves, movedOn, NOT_MOVED, readMove } from './moves.ts';

const start: Moves = { past: [], now: NOT_MOVED, future: [], stroke: null };
const by = (moves: Moves, acrossMm: number, stroke: string | null) =>
  afterAct(moves, { kind: 'move', to: movedOn(moves.now, 0, { acrossMm }), stroke });

test('a drag is one step back, however many moves it had; the next drag is another', () => {
  const dragged = by(by(by(start, 0.1, 'a'), 0.1, 'a'), 0.1, 'a');
  const again = by(dragged, 1, 'b');
  expect(again.now.translationMm).toEqual([1.3, 0]);
  const back = afterAct(again, { kind: 'undo' });
  expect(back.now.translationMm).toEqual([0.3, 0]);
  const start0 = afterAct(back, { kind: 'undo' });
  expect(start0.now).toEqual(NOT_MOVED);
  expect(afterAct(afterAct(start0, { kind: 'redo' }), { kind: 'redo' }).now).toEqual(again.now);
  expect(afterAct(start0, { kind: 'undo' })).toBe(start0);
});

test('each view has its own shift and bend; length is of both', () => {
  const move = movedOn(movedOn(NOT_MOVED, 1, { acrossMm: 1, alongMm: 2, deg: 3 }), 0, { deg: -4, alongMm: 1 });
  expect(move).toEqual({ translationMm: [0, 1], angulationDeg: [-4, 3], lengthMm: 3, rotationDeg: 0 });
  expect(readMove(JSON.parse(JSON.stringify(move)))).toEqual(move);
  expect(readMove({ ...move, angulationDeg: [1] })).toBeNull();
});
