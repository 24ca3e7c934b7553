/** A number between a minus and a plus, large enough for a gloved hand; it can be typed as well. */
import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import { readNumber } from '../form/read-number.ts';

interface StepperProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly step: number;
  readonly decimals: number;
  readonly onChange: (value: number) => void;
  readonly isLarge?: boolean;
  readonly isLabelHidden?: boolean;
}

/** Steps add up without a tail of digits. */
const FINEST = 1000;

export function Stepper(props: StepperProps) {
  const { label, unit, value, step, decimals, onChange, isLarge, isLabelHidden } = props;
  const id = useId();
  const shown = value.toFixed(decimals);
  const [text, setText] = useState(shown);
  useEffect(() => setText(shown), [shown]);
  const typed = readNumber(text);
  const set = (next: number) => onChange(Math.round(next * FINEST) / FINEST);
  const settle = () => {
    if (typed !== null && typed.toFixed(decimals) !== shown) set(typed);
    if (typed !== null) setText(shown);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') settle();
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    set((typed ?? value) + (event.key === 'ArrowUp' ? step : -step));
  };
  return (
    <div className={isLarge ? 'stepper stepper-large' : 'stepper'}>
      <label htmlFor={id} className={isLabelHidden ? 'sr-only' : undefined}>
        {label}
        <span className="sr-only">, {unit}</span>
      </label>
      <div className="stepper-row">
        <button type="button" aria-label={`${label}: ${step} ${unit} less`} onClick={() => set(value - step)}>
          −
        </button>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={typed === null ? true : undefined}
          aria-describedby={typed === null ? `${id}-why` : undefined}
          onChange={(event) => setText(event.target.value)}
          onBlur={settle}
          onKeyDown={onKeyDown}
        />
        <button type="button" aria-label={`${label}: ${step} ${unit} more`} onClick={() => set(value + step)}>
          +
        </button>
      </div>
      {typed === null && <FieldWhy id={`${id}-why`} why="Write a number, like 33.5." />}
    </div>
  );
}
