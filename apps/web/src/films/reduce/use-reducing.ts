/** Reducing on the screen: where the distal part lies now, what that leaves, and what may be marked for it. */
import type { CaseState, FilmState } from '@bonewright/casebook';
import {
  type BrokenEnds,
  fullReduction,
  type ReductionFacts,
  reducedBone,
  reducedBy,
  reductionFacts,
} from '@bonewright/film';
import { useEffect, useMemo, useReducer, useState } from 'react';
import type { NewEvent } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import { filmOfView, tracedView } from '../trace/use-joining.ts';
import { afterAct, type Move, NOT_MOVED, readMove } from './moves.ts';

export const VIEWS = ['craniocaudal', 'mediolateral'] as const;
export type ViewIndex = 0 | 1;
export type Ends = readonly [BrokenEnds | null, BrokenEnds | null];

export interface Reducing {
  readonly films: readonly [FilmState, FilmState];
  /** As the films show it, and as it lies now. */
  readonly before: ReductionFacts;
  readonly now: ReductionFacts;
  readonly move: Move;
  readonly ends: Ends;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly moveTo: (to: Move, stroke?: string) => void;
  readonly rest: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly full: () => void;
  readonly markEnds: (view: ViewIndex, ends: BrokenEnds) => void;
  /** What keeps it for the plan; null where the record holds just that. */
  readonly toKeep: NewEvent | null;
}

/** Null where there is no bone of two traced films to reduce. */
export function useReducing({ caseId, films, bone, reduction }: CaseState): Reducing | null {
  const kept = reduction?.value;
  // Of this bone, since this reduction: what was moved before another was kept is gone.
  const { value: left, set: leave } = useDraft(`reduction.${caseId}.${bone?.seq}.${reduction?.seq}`, readMove);
  const begun = left ?? kept?.move ?? NOT_MOVED;
  const [moves, act] = useReducer(afterAct, { past: [], now: begun, future: [], stroke: null });
  useEffect(() => leave(moves.now), [moves.now, leave]);
  const [ends, setEnds] = useState<Ends>([
    kept?.brokenEnds?.craniocaudal ?? null,
    kept?.brokenEnds?.mediolateral ?? null,
  ]);
  const craniocaudal = filmOfView(films, 'craniocaudal');
  const mediolateral = filmOfView(films, 'mediolateral');
  const apart = bone?.value.betweenViewsDeg ?? null;
  const before = useMemo(() => {
    const [a, b] = [craniocaudal && tracedView(craniocaudal), mediolateral && tracedView(mediolateral)];
    if (!a || !b || apart === null) return null;
    return reductionFacts(a, b, apart, { craniocaudal: ends[0] ?? undefined, mediolateral: ends[1] ?? undefined });
  }, [craniocaudal, mediolateral, apart, ends]);
  if (!craniocaudal || !mediolateral || !before || !bone) return null;

  const now = reducedBy(before, moves.now);
  const isKept = kept !== undefined && same(kept.move, moves.now) && same(kept.brokenEnds ?? {}, marked(ends));
  const toKeep: NewEvent = {
    kind: 'bone-reduced',
    payload: { move: moves.now, bone: reducedBone(bone.value.bone, now), brokenEnds: marked(ends) },
  };
  const moveTo = (to: Move, stroke?: string) => act({ kind: 'move', to, stroke: stroke ?? null });
  return {
    films: [craniocaudal, mediolateral],
    before,
    now,
    move: moves.now,
    ends,
    canUndo: moves.past.length > 0,
    canRedo: moves.future.length > 0,
    moveTo,
    rest: () => act({ kind: 'rest' }),
    undo: () => act({ kind: 'undo' }),
    redo: () => act({ kind: 'redo' }),
    full: () => moveTo(fullReduction(before)),
    markEnds: (view, marks) => setEnds((old) => (view === 0 ? [marks, old[1]] : [old[0], marks])),
    toKeep: isKept ? null : toKeep,
  };
}

const marked = ([a, b]: Ends) => ({ ...(a ? { craniocaudal: a } : {}), ...(b ? { mediolateral: b } : {}) });
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
