/** What is half typed, kept on this device until it is recorded. */
import { useCallback, useState } from 'react';
import { recall, remember } from './device-memory.ts';

export interface Draft<T> {
  readonly value: T;
  readonly set: (value: T) => void;
  /** Forgets what was typed. */
  readonly clear: () => void;
}

/** `read` turns what was kept into a draft, and null into an empty one; it must refuse nothing. */
export function useDraft<T>(key: string, read: (kept: unknown) => T): Draft<T> {
  const draftKey = `draft.${key}`;
  const [held, setHeld] = useState(() => ({ key, value: read(parsed(recall(draftKey))) }));
  const current = held.key === key ? held.value : read(parsed(recall(draftKey)));
  const set = useCallback(
    (value: T) => {
      setHeld({ key, value });
      remember(draftKey, JSON.stringify(value));
    },
    [key, draftKey],
  );
  const clear = useCallback(() => {
    remember(draftKey, null);
    setHeld({ key, value: read(null) });
  }, [key, draftKey, read]);
  return { value: current, set, clear };
}

function parsed(text: string | null): unknown {
  if (text === null) return null;
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
