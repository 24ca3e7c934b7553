/** Up to five words side by side as one ruled strip, one of them chosen or none. */
import { useId } from 'react';
import { FieldWhy } from './field.tsx';

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [value: T, word: string])[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
  readonly why?: string | null;
  /** The label is read out but not shown: a heading beside says it already. */
  readonly isLabelHidden?: boolean;
}

export function Choice<T extends string>({ label, options, value, onChange, why, isLabelHidden }: ChoiceProps<T>) {
  const id = useId();
  return (
    <fieldset className="field" aria-describedby={why ? `${id}-why` : undefined}>
      <legend className={isLabelHidden ? 'sr-only' : undefined}>{label}</legend>
      <span className="choice">
        {options.map(([option, word]) => (
          <label key={option}>
            <input type="radio" name={id} value={option} checked={option === value} onChange={() => onChange(option)} />
            {word}
          </label>
        ))}
      </span>
      {why && <FieldWhy id={`${id}-why`} why={why} />}
    </fieldset>
  );
}
