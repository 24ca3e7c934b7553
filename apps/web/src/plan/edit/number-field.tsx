/** A number with its unit inside the field; what is typed counts when it is left or entered, wrong text is kept and named. */
import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import { FieldWhy } from '../../form/field.tsx';
import { readNumber } from '../../form/read-number.ts';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  readonly step: number;
  readonly value: number;
  readonly min?: number;
  readonly onChange: (value: number) => void;
}

/** Steps add up without a tail of digits. */
const FINEST = 1000;

export function NumberField({ label, unit, step, value, min = Number.NEGATIVE_INFINITY, onChange }: NumberFieldProps) {
  const id = useId();
  const [text, setText] = useState(String(value));
  useEffect(() => setText(String(value)), [value]);
  const typed = readNumber(text);
  const why = faultOf(typed, min);
  const set = (next: number) => {
    if (next >= min && next !== value) onChange(Math.round(next * FINEST) / FINEST);
  };
  const settle = () => {
    if (typed !== null && !why) set(typed);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') settle();
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    if (typed !== null) set(typed + (event.key === 'ArrowUp' ? step : -step));
  };
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {unit && <span className="sr-only">, {unit}</span>}
      </label>
      <span className="field-box">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={why ? true : undefined}
          aria-describedby={why ? `${id}-why` : undefined}
          onChange={(event) => setText(event.target.value)}
          onBlur={settle}
          onKeyDown={onKeyDown}
        />
        {unit && <span aria-hidden="true">{unit}</span>}
      </span>
      {why && <FieldWhy id={`${id}-why`} why={why} />}
    </div>
  );
}

function faultOf(typed: number | null, min: number): string | null {
  if (typed === null) return 'Write a number, like 4.5.';
  return typed < min ? `It has to be at least ${min}.` : null;
}
