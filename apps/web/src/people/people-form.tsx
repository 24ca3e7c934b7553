/** A form of few fields: sent once at a time, and why it was refused stands above its button. */
import type { ReactNode } from 'react';
import { FieldWhy } from '../form/field.tsx';
import type { useDoing } from './use-doing.ts';

interface PeopleFormProps {
  readonly doing: Pick<ReturnType<typeof useDoing>, 'why' | 'isDoing'>;
  /** The word on the button. */
  readonly does: string;
  readonly onSend: () => void;
  readonly children: ReactNode;
}

export function PeopleForm({ doing: { why, isDoing }, does, onSend, children }: PeopleFormProps) {
  return (
    <form
      className="people-form"
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      {children}
      {why && (
        <div role="alert">
          <FieldWhy why={why} />
        </div>
      )}
      <p>
        <button type="submit" className="button button-main" disabled={isDoing}>
          {does}
        </button>
      </p>
    </form>
  );
}
