/** One field: label above, unit inside at the right, range below, what is wrong beside it. The text stays as it was typed. */
import { type HTMLAttributes, type ReactNode, useId } from 'react';
import { VerdictMark } from '../drawing/verdict-mark.tsx';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly unit?: string;
  /** Range, source: what helps to fill it in. */
  readonly help?: ReactNode;
  /** What is wrong, and what would be right. */
  readonly why?: string | null;
  readonly type?: 'text' | 'datetime-local' | 'date' | 'password';
  readonly autoComplete?: 'off' | 'username' | 'current-password' | 'new-password';
  readonly inputMode?: HTMLAttributes<HTMLInputElement>['inputMode'];
  /** Words to choose from; others can be typed. */
  readonly options?: readonly string[];
  readonly onBlur?: () => void;
  readonly onEnter?: () => void;
}

export function Field(props: FieldProps) {
  const { label, value, onChange, unit, help, why, type = 'text', inputMode, options, onBlur, onEnter } = props;
  const { autoComplete = 'off' } = props;
  const id = useId();
  const about = [why && `${id}-why`, help && `${id}-help`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>
        {unit ? (
          <span>
            {label}
            <span className="sr-only">, in {unit}</span>
          </span>
        ) : (
          label
        )}
      </label>
      <span className="field-box">
        <input
          id={id}
          type={type}
          value={value}
          inputMode={inputMode}
          autoComplete={autoComplete}
          list={options ? `${id}-options` : undefined}
          aria-invalid={why ? true : undefined}
          aria-describedby={about || undefined}
          onChange={(event) => onChange(event.target.value)}
          onBlur={onBlur}
          onKeyDown={(event) => event.key === 'Enter' && onEnter?.()}
        />
        {unit && <span aria-hidden="true">{unit}</span>}
      </span>
      {options && (
        <datalist id={`${id}-options`}>
          {options.map((option) => (
            <option key={option} value={option} />
          ))}
        </datalist>
      )}
      {why && <FieldWhy id={`${id}-why`} why={why} />}
      {help && (
        <span id={`${id}-help`} className="caption">
          {help}
        </span>
      )}
    </div>
  );
}

export function FieldWhy({ id, why }: { readonly id?: string; readonly why: string }) {
  return (
    <span id={id} className="field-why">
      <VerdictMark verdict="stop" />
      <span>{why}</span>
    </span>
  );
}
