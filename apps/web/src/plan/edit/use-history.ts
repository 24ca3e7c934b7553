/** One construct under the hand, with undo and redo without end; what rests is told to `keep`. */
import type { Construct } from '@bonewright/construct';
import { useCallback, useEffect, useReducer, useRef } from 'react';
import { inOrder } from './edits.ts';

interface History {
  readonly past: readonly Construct[];
  readonly present: Construct | null;
  readonly future: readonly Construct[];
  /** Consecutive changes with the same name count as one step back: a drag, a run of arrow keys. */
  readonly stroke: string | null;
}

type Act =
  | { readonly kind: 'change'; readonly construct: Construct; readonly stroke: string | null }
  | { readonly kind: 'rest' | 'undo' | 'redo' }
  | { readonly kind: 'from outside'; readonly construct: Construct | null };

export function step(history: History, act: Act): History {
  const { past, present, future } = history;
  switch (act.kind) {
    case 'change': {
      if (!present) return { past, present: act.construct, future: [], stroke: act.stroke };
      const sameStroke = act.stroke !== null && act.stroke === history.stroke;
      return { past: sameStroke ? past : [...past, present], present: act.construct, future: [], stroke: act.stroke };
    }
    case 'rest':
      return { ...history, present: present && numbered(present), stroke: null };
    case 'undo': {
      const last = past.at(-1);
      if (!last || !present) return history;
      return { past: past.slice(0, -1), present: last, future: [present, ...future], stroke: null };
    }
    case 'redo': {
      const [next, ...rest] = future;
      if (!next || !present) return history;
      return { past: [...past, present], present: next, future: rest, stroke: null };
    }
    case 'from outside':
      if (same(present, act.construct)) return history;
      return { past: present ? [...past, present] : past, present: act.construct, future: [], stroke: null };
  }
}

/** Pins are numbered from the proximal end: one that was dragged past another takes its number. */
const numbered = (construct: Construct): Construct => {
  const pins = inOrder(construct.pins);
  return pins.every((pin, i) => pin === construct.pins[i]) ? construct : { ...construct, pins };
};

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** A change this old without another is kept. */
const REST_MS = 500;

export interface ConstructHistory {
  readonly construct: Construct | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** True while changes come so fast that only quick figures make sense. */
  readonly isMoving: boolean;
  readonly change: (construct: Construct, stroke?: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/**
 * `kept` is what the record says; `keep` writes the record once the hand rests; `renumber` hears the new place of each
 * pin where pins changed places.
 */
export function useHistory(
  kept: Construct | null,
  keep: (construct: Construct) => void,
  renumber: (places: readonly number[]) => void,
): ConstructHistory {
  const [history, act] = useReducer(step, { past: [], present: kept, future: [], stroke: null });
  const lastKept = useRef(kept);
  const told = useRef({ keep, renumber });
  told.current = { keep, renumber };

  useEffect(() => {
    if (same(kept, lastKept.current)) return;
    lastKept.current = kept;
    act({ kind: 'from outside', construct: kept });
  }, [kept]);

  const { present } = history;
  useEffect(() => {
    if (!present || same(present, lastKept.current)) return;
    const rest = setTimeout(() => {
      const rested = numbered(present);
      lastKept.current = rested;
      act({ kind: 'rest' });
      if (rested !== present) told.current.renumber(present.pins.map((pin) => rested.pins.indexOf(pin)));
      told.current.keep(rested);
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [present]);

  const change = useCallback(
    (construct: Construct, stroke?: string) => act({ kind: 'change', construct, stroke: stroke ?? null }),
    [],
  );
  const undo = useCallback(() => act({ kind: 'undo' }), []);
  const redo = useCallback(() => act({ kind: 'redo' }), []);
  return {
    construct: present,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
    isMoving: history.stroke !== null,
    change,
    undo,
    redo,
  };
}
