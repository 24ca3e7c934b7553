/** The record as a story, the newest first. */
import { type RecordedEvent, sentenceOf } from '@bonewright/casebook';
import { useState } from 'react';
import { moment } from '../words/time.ts';

/** So many are read at a glance; the rest unfold. */
const AT_A_GLANCE = 12;

export function Story({ recorded }: { readonly recorded: readonly RecordedEvent[] }) {
  const [isWhole, setWhole] = useState(false);
  const newestFirst = recorded.toReversed();
  const shown = isWhole ? newestFirst : newestFirst.slice(0, AT_A_GLANCE);
  return (
    <section className="story" aria-labelledby="story-title">
      <header className="story-head">
        <h2 id="story-title">What the record holds</h2>
        <span className="quiet">{recorded.length === 1 ? '1 entry' : `${recorded.length} entries`}, newest first</span>
      </header>
      <ol reversed start={recorded.length}>
        {shown.map((event) => (
          <li key={event.id}>
            <p>{sentenceOf(event)}</p>
            <p className="caption">
              {moment(event.at)}, {event.by}
            </p>
          </li>
        ))}
      </ol>
      {recorded.length > AT_A_GLANCE && (
        <p>
          <button type="button" className="button" aria-expanded={isWhole} onClick={() => setWhole(!isWhole)}>
            {isWhole ? 'Only the newest' : `All ${recorded.length} entries`}
          </button>
        </p>
      )}
    </section>
  );
}
