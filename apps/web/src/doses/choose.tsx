/** One word of a list, and none until somebody chooses. */
import { useId } from 'react';

interface ChooseProps {
  readonly label: string;
  /** Empty where nothing is chosen yet. */
  readonly value: string;
  readonly options: readonly string[];
  /** What to show for an option; the option itself where absent. */
  readonly words?: Readonly<Record<string, string>>;
  readonly onChange: (value: string) => void;
}

export function Choose({ label, value, options, words = {}, onChange }: ChooseProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">choose</option>
          {options.map((option) => (
            <option key={option} value={option}>
              {words[option] ?? option}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
