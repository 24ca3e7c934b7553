import { useId } from 'react';

interface SelectFieldProps<K extends string> {
  readonly label: string;
  readonly value: K;
  readonly options: readonly (readonly [value: K, word: string])[];
  readonly onChange: (value: K) => void;
}

/** One choice of a list, its label above; the value on screen stays even where the list no longer has it. */
export function SelectField<K extends string>({ label, value, options, onChange }: SelectFieldProps<K>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <select
          id={id}
          value={value}
          onChange={(event) => {
            const chosen = options.find(([key]) => key === event.target.value);
            if (chosen) onChange(chosen[0]);
          }}
        >
          {options.every(([key]) => key !== value) && <option value={value}>no longer in the drawer</option>}
          {options.map(([key, word]) => (
            <option key={key} value={key}>
              {word}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
