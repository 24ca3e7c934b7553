/** Events of an anaesthetic, one press each, at the moment of the press. */
import { CHART_MARKS, type ChartMark, mayRecord } from '@bonewright/casebook';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { capital } from '../words/patient.ts';

export function EventButtons({ append }: { readonly append: Append }) {
  const role = useRole();
  const [words, setWords] = useState('');
  if (!mayRecord(role, 'chart-marked')) return null;
  const mark = (what: ChartMark, said = '') =>
    append([{ kind: 'chart-marked', payload: { at: new Date().toISOString(), mark: what, words: said } }]);
  return (
    <section aria-labelledby="events-title">
      <h3 id="events-title" className="chart-heading">
        Happens now
      </h3>
      <p className="chart-buttons">
        {CHART_MARKS.filter((what) => what !== 'other').map((what) => (
          <button key={what} type="button" className="button" onClick={() => mark(what)}>
            {capital(what)}
          </button>
        ))}
      </p>
      <form
        className="chart-other"
        onSubmit={(event) => {
          event.preventDefault();
          if (words.trim() === '') return;
          mark('other', words.trim());
          setWords('');
        }}
      >
        <Field label="Something else, in words" value={words} onChange={setWords} />
        <button type="submit" className="button" disabled={words.trim() === ''}>
          Mark it
        </button>
      </form>
    </section>
  );
}
