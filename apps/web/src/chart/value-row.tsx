/** One figure of a reading between minus and plus; it can be typed, or left out. */
import type { Lane } from '@bonewright/ward';
import { useEffect, useId, useState } from 'react';
import { readNumber } from '../form/read-number.ts';

interface ValueRowProps {
  readonly lane: Lane;
  readonly value: number | null;
  readonly isAsLast: boolean;
  readonly onChange: (value: number | null) => void;
}

/** Steps add up without a tail of digits. */
const FINEST = 1000;

export function ValueRow({ lane, value, isAsLast, onChange }: ValueRowProps) {
  const { word, unit, step, decimals, most, from } = lane;
  const id = useId();
  const shown = value === null ? '' : value.toFixed(decimals);
  const [text, setText] = useState(shown);
  useEffect(() => setText(shown), [shown]);
  const typed = readNumber(text);
  const isWrong = text.trim() !== '' && (typed === null || typed < 0 || typed > most);
  const set = (next: number) => onChange(Math.min(most, Math.max(0, Math.round(next * FINEST) / FINEST)));
  const settle = () => {
    if (text.trim() === '') return value === null ? undefined : onChange(null);
    if (typed !== null && !isWrong && typed.toFixed(decimals) !== shown) set(typed);
  };
  const by = (sign: number) => set(value === null ? from : value + sign * step);
  return (
    <div className="chart-row" data-as-last={isAsLast || undefined}>
      <label htmlFor={id}>
        {word} <span>{unit}</span>
        <small>{value === null ? 'not read' : isAsLast ? 'as last time' : ''}</small>
      </label>
      <button type="button" aria-label={`${word}: ${step} ${unit} less`} onClick={() => by(-1)}>
        −
      </button>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        aria-invalid={isWrong || undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={settle}
        onKeyDown={(event) => event.key === 'Enter' && settle()}
      />
      <button type="button" aria-label={`${word}: ${step} ${unit} more`} onClick={() => by(1)}>
        +
      </button>
      <button
        type="button"
        className="chart-not"
        aria-label={`${word}: not read`}
        aria-pressed={value === null}
        onClick={() => onChange(null)}
      >
        not read
      </button>
    </div>
  );
}
