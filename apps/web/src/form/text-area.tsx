/** Several lines of words, labelled like any field. */
import { type ReactNode, useId } from 'react';
import { FieldWhy } from './field.tsx';

interface TextAreaProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly help?: ReactNode;
  readonly why?: string | null;
}

const ROWS = 3;

export function TextArea({ label, value, onChange, help, why }: TextAreaProps) {
  const id = useId();
  const about = [why && `${id}-why`, help && `${id}-help`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <textarea
          id={id}
          rows={ROWS}
          value={value}
          aria-invalid={why ? true : undefined}
          aria-describedby={about || undefined}
          onChange={(event) => onChange(event.target.value)}
        />
      </span>
      {why && <FieldWhy id={`${id}-why`} why={why} />}
      {help && (
        <span id={`${id}-help`} className="caption">
          {help}
        </span>
      )}
    </div>
  );
}
