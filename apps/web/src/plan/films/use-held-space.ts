/** True while the space bar is held, unless something that the bar presses or types in has the focus. */
import { useEffect, useState } from 'react';

export function useHeldSpace(): boolean {
  const [isHeld, setHeld] = useState(false);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== ' ' || takesSpace(event.target)) return;
      event.preventDefault();
      setHeld(true);
    };
    const release = () => setHeld(false);
    document.addEventListener('keydown', press);
    document.addEventListener('keyup', release);
    window.addEventListener('blur', release);
    return () => {
      document.removeEventListener('keydown', press);
      document.removeEventListener('keyup', release);
      window.removeEventListener('blur', release);
    };
  }, []);
  return isHeld;
}

const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof Element && target.matches('button, a, input, select, textarea, summary, [contenteditable]');
