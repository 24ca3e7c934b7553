/** Takes a film out of the case, after asking: its marks go with it, its file is kept. */
import { useState } from 'react';
import type { Append } from '../sync/new-event.ts';

interface TakeOutProps {
  readonly filmId: string;
  readonly append: Append;
}

export function TakeOut({ filmId, append }: TakeOutProps) {
  const [isAsking, ask] = useState(false);
  if (!isAsking)
    return (
      <button type="button" className="link" onClick={() => ask(true)}>
        take it out
      </button>
    );
  return (
    <span className="take-out" role="alert">
      Its marks go with it.
      <button
        type="button"
        className="button-small"
        onClick={() => append([{ kind: 'film-removed', payload: { filmId } }])}
      >
        Take it out
      </button>
      <button type="button" className="button-small" onClick={() => ask(false)}>
        Keep it
      </button>
    </span>
  );
}
