/** The stock's story, the newest first. */
import { isOfStock, practiceSentenceOf, type RecordedPracticeEvent } from '@bonewright/casebook';
import { useState } from 'react';
import { moment } from '../words/time.ts';

/** So many are read at a glance; the rest unfold. */
const AT_A_GLANCE = 8;

export function StockHistory({ recorded }: { readonly recorded: readonly RecordedPracticeEvent[] }) {
  const [isWhole, setWhole] = useState(false);
  const newestFirst = recorded.filter(isOfStock).toReversed();
  if (newestFirst.length === 0) return null;
  const shown = isWhole ? newestFirst : newestFirst.slice(0, AT_A_GLANCE);
  return (
    <section className="dose-form" aria-labelledby="stock-history">
      <h2 id="stock-history">How it came to be so</h2>
      <ol className="stock-history" reversed start={newestFirst.length}>
        {shown.map((event) => (
          <li key={event.id}>
            <p>{practiceSentenceOf(event)}</p>
            <p className="caption">
              {moment(event.at)}, {event.by}
              {event.kind === 'stock-used' && (
                <>
                  {', '}
                  <a href={`/case/${event.payload.forCase}`}>to the patient</a>
                </>
              )}
            </p>
          </li>
        ))}
      </ol>
      {newestFirst.length > AT_A_GLANCE && (
        <p>
          <button type="button" className="button" aria-expanded={isWhole} onClick={() => setWhole(!isWhole)}>
            {isWhole ? 'Only the newest' : `All ${newestFirst.length} entries`}
          </button>
        </p>
      )}
    </section>
  );
}
