/** The box that looks through everything recorded. `/` goes to it, arrows go through what was found, Escape empties it. */
import { type KeyboardEvent, useEffect, useId, useRef } from 'react';

interface FindProps {
  readonly question: string;
  readonly onChange: (question: string) => void;
}

export function Find({ question, onChange }: FindProps) {
  const id = useId();
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent): void => {
      const isTyping = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
      if (event.key !== '/' || isTyping || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      box.current?.focus();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') onChange('');
    if (event.key !== 'ArrowDown') return;
    event.preventDefault();
    document.querySelector<HTMLElement>('.found-link')?.focus();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: the search element is not yet known to every browser in use.
    <div className="find" role="search">
      <label htmlFor={id}>Find</label>
      <span className="field-box">
        <input
          ref={box}
          id={id}
          type="search"
          value={question}
          maxLength={200}
          autoComplete="off"
          spellCheck={false}
          placeholder="name, number, species, words of a note"
          onChange={(event) => onChange(event.target.value)}
          onKeyDown={onKeyDown}
        />
      </span>
    </div>
  );
}
