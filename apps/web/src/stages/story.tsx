/** The record as a story, the newest first. */
import { type RecordedEvent, sentenceOf } from '@bonewright/casebook';
import { moment } from '../words/time.ts';

export function Story({ recorded }: { readonly recorded: readonly RecordedEvent[] }) {
  return (
    <section className="story" aria-labelledby="story-title">
      <header className="story-head">
        <h2 id="story-title">What the record holds</h2>
        <span className="quiet">{recorded.length === 1 ? '1 entry' : `${recorded.length} entries`}, newest first</span>
      </header>
      <ol reversed>
        {recorded.toReversed().map((event) => (
          <li key={event.id}>
            <p>{sentenceOf(event)}</p>
            <p className="caption">
              {moment(event.at)}, {event.by}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}
