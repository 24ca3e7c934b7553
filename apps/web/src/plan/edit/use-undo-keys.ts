/** Z undoes and Shift+Z redoes from anywhere but a field that is being typed in. */
import { useEffect } from 'react';

interface UndoHands {
  readonly undo: () => void;
  readonly redo: () => void;
}

export function useUndoKeys({ undo, redo }: UndoHands): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== 'z' || event.altKey || isTyping(event.target)) return;
      event.preventDefault();
      if (event.shiftKey) redo();
      else undo();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [undo, redo]);
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable);
