/** What the vet asked for, as it was written; a task done is a note of the record. Nothing of it can be changed here. */
import type { CaseState } from '@bonewright/casebook';
import type { Append } from '../sync/new-event.ts';
import { dayOf, hourOf } from '../words/time.ts';

interface TasksProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function Tasks({ state, append }: TasksProps) {
  const { aftercare } = state.care;
  if (!aftercare)
    return (
      <section aria-labelledby="tasks-title">
        <h2 id="tasks-title">Today</h2>
        <p>The vet has written no tasks yet. Ask, or ring.</p>
      </section>
    );
  const { tasks, lookFor, housing, recheckOn } = aftercare.value;
  return (
    <section aria-labelledby="tasks-title">
      <h2 id="tasks-title">Today</h2>
      <ul className="carer-tasks">
        {tasks.map(({ what, when, doseId }) => {
          const words = doneWords(what, when);
          const done = state.notes.findLast(({ value, at }) => value.text === words && dayOf(at) === 1);
          return (
            <li key={`${what}-${when}`}>
              <div>
                <b>{what}</b>
                <span>{[when, doseId ? doseWords(state, doseId) : ''].filter(Boolean).join('. ')}</span>
                {done && <span>{`done ${hourOf(done.at)}, ${done.by}`}</span>}
              </div>
              <button
                type="button"
                className="button"
                aria-label={`Done: ${what}, ${when}`}
                onClick={() => append([{ kind: 'note-added', payload: { text: words, stage: 'recovery' } }])}
              >
                {done ? 'Done again' : 'Done'}
              </button>
            </li>
          );
        })}
      </ul>
      {lookFor.length > 0 && (
        <>
          <h3>Look for</h3>
          <ul>
            {lookFor.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {housing && <p>{housing}</p>}
      <p>{`Written by ${aftercare.by}.${recheckOn ? ` Next look on ${recheckOn}.` : ''}`}</p>
    </section>
  );
}

const doneWords = (what: string, when: string): string => `Done by the carer: ${what}, ${when}`;

/** The signed amount, to read; a dose that was voided or never signed is not to be given. */
function doseWords({ doses }: CaseState, doseId: string): string {
  const dose = doses.find((one) => one.doseId === doseId);
  if (!dose?.signed || dose.voided) return 'Do not give it: the dose is not signed. Ring us';
  const { drug, route } = dose.line;
  return `${drug}, ${dose.signed.value.drawnMl} ml, ${route}, signed by ${dose.signed.by}`;
}
