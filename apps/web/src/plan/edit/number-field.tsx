/** A number with its unit inside the field; what is typed counts when it is left or entered, wrong text is kept and named. */
import { useEffect, useId, useState } from 'react';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  readonly step: number;
  readonly value: number;
  readonly min?: number;
  readonly onChange: (value: number) => void;
}

export function NumberField({ label, unit, step, value, min, onChange }: NumberFieldProps) {
  const id = useId();
  const [text, setText] = useState(String(value));
  useEffect(() => setText(String(value)), [value]);
  const typed = Number(text.replace(',', '.'));
  const isWrong = text.trim() === '' || !Number.isFinite(typed) || (min !== undefined && typed < min);
  const settle = () => {
    if (!isWrong && typed !== value) onChange(typed);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <input
          id={id}
          inputMode="decimal"
          value={text}
          aria-invalid={isWrong}
          aria-describedby={isWrong ? `${id}-why` : undefined}
          onChange={(event) => setText(event.target.value)}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
            if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
              event.preventDefault();
              if (!isWrong) onChange(typed + (event.key === 'ArrowUp' ? step : -step));
            }
          }}
        />
        <span aria-hidden="true">{unit}</span>
      </span>
      {isWrong && (
        <span id={`${id}-why`} className="field-why">
          {min === undefined ? 'a number is needed' : `a number from ${min} up is needed`}
        </span>
      )}
    </div>
  );
}
