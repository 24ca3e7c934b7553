/** Asks the server a moment after the last key, and shows the answer to the last question only. */
import { useEffect, useState } from 'react';
import { type Found, search } from '../sync/api.ts';

export interface FoundSnapshot {
  readonly found: readonly Found[];
  readonly isAsking: boolean;
  /** Why nothing could be asked; null otherwise. */
  readonly trouble: string | null;
}

const AFTER_KEY_MS = 120;
const NOTHING: FoundSnapshot = { found: [], isAsking: false, trouble: null };

export function useFound(question: string): FoundSnapshot {
  const [snapshot, setSnapshot] = useState(NOTHING);
  const asked = question.trim();
  useEffect(() => {
    if (asked === '') {
      setSnapshot(NOTHING);
      return;
    }
    setSnapshot((before) => ({ ...before, isAsking: true, trouble: null }));
    const stop = new AbortController();
    const ask = async (): Promise<void> => {
      try {
        const found = await search(asked, stop.signal);
        if (!stop.signal.aborted) setSnapshot({ found, isAsking: false, trouble: null });
      } catch (error) {
        if (stop.signal.aborted) return;
        const because = error instanceof Error ? error.message : String(error);
        setSnapshot({ found: [], isAsking: false, trouble: `Nothing could be looked for: ${because}.` });
      }
    };
    const timer = setTimeout(() => void ask(), AFTER_KEY_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [asked]);
  return snapshot;
}
