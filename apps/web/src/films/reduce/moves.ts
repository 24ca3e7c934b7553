/** Moves of the distal fragment under the hand, with undo and redo without end. */
import type { ReductionMove } from '@bonewright/film';

export type Move = Required<ReductionMove>;
type Pair = readonly [craniocaudal: number, mediolateral: number];

export const NOT_MOVED: Move = { translationMm: [0, 0], angulationDeg: [0, 0], lengthMm: 0, rotationDeg: 0 };

export interface Moves {
  readonly past: readonly Move[];
  readonly now: Move;
  readonly future: readonly Move[];
  /** Changes of one stroke count as one step back: a drag, a run of arrow keys. */
  readonly stroke: string | null;
}

export type MovesAct =
  | { readonly kind: 'move'; readonly to: Move; readonly stroke: string | null }
  | { readonly kind: 'rest' | 'undo' | 'redo' };

export function afterAct(moves: Moves, act: MovesAct): Moves {
  const { past, now, future, stroke } = moves;
  switch (act.kind) {
    case 'move': {
      const isSameStroke = act.stroke !== null && act.stroke === stroke;
      return { past: isSameStroke ? past : [...past, now], now: tidied(act.to), future: [], stroke: act.stroke };
    }
    case 'rest':
      return { ...moves, stroke: null };
    case 'undo': {
      const last = past.at(-1);
      return last ? { past: past.slice(0, -1), now: last, future: [now, ...future], stroke: null } : moves;
    }
    case 'redo': {
      const [next, ...rest] = future;
      return next ? { past: [...past, now], now: next, future: rest, stroke: null } : moves;
    }
  }
}

/** By so much more, in one view: 0 craniocaudal, 1 mediolateral. */
export function movedOn(
  move: Move,
  view: 0 | 1,
  by: { readonly acrossMm?: number; readonly alongMm?: number; readonly deg?: number },
): Move {
  const { acrossMm = 0, alongMm = 0, deg = 0 } = by;
  const add = ([a, b]: Pair, more: number): Pair => (view === 0 ? [a + more, b] : [a, b + more]);
  return {
    ...move,
    translationMm: add(move.translationMm, acrossMm),
    angulationDeg: add(move.angulationDeg, deg),
    lengthMm: move.lengthMm + alongMm,
  };
}

const FINEST = 1000;
const fine = (value: number): number => Math.round(value * FINEST) / FINEST;

/** Without a tail of digits that no hand put there. */
function tidied({ translationMm: [a, b], angulationDeg: [c, d], lengthMm, rotationDeg }: Move): Move {
  return {
    translationMm: [fine(a), fine(b)],
    angulationDeg: [fine(c), fine(d)],
    lengthMm: fine(lengthMm),
    rotationDeg: fine(rotationDeg),
  };
}

/** What was kept on this device; anything else counts as nothing. */
export function readMove(kept: unknown): Move | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { translationMm, angulationDeg, lengthMm, rotationDeg } = kept as Partial<Record<keyof Move, unknown>>;
  const [shift, bend] = [readPair(translationMm), readPair(angulationDeg)];
  if (!shift || !bend || typeof lengthMm !== 'number' || typeof rotationDeg !== 'number') return null;
  return { translationMm: shift, angulationDeg: bend, lengthMm, rotationDeg };
}

function readPair(kept: unknown): Pair | null {
  if (!Array.isArray(kept) || kept.length !== 2) return null;
  const [a, b]: unknown[] = kept;
  return typeof a === 'number' && typeof b === 'number' ? [a, b] : null;
}
