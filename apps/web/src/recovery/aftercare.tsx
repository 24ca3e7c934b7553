/** What carers are asked to do, as a vet wrote it, and the sheet that goes home with the patient. */
import { type CaseState, mayRecord } from '@bonewright/casebook';
import { EntryForm } from '../form/entry-form.tsx';
import { PrintPapers } from '../papers/print-papers.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { dayWords, moment } from '../words/time.ts';
import { aftercareFields, aftercareOutcome, aftercareValues } from './aftercare-fields.ts';

interface AftercareProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function Aftercare({ state, append }: AftercareProps) {
  const isOwnToWrite = mayRecord(useRole(), 'aftercare-planned');
  return (
    <section aria-labelledby="aftercare-title">
      <h2 id="aftercare-title">Aftercare</h2>
      <AsItStands state={state} />
      {isOwnToWrite && (
        <>
          <h3>{state.care.aftercare ? 'Write it again' : 'Write it'}</h3>
          <p className="quiet">
            In a carer’s words. No trials of fixator care in animals were found: it rests on opinion, and the sheet says
            so. The lines below are there to be changed (common practice, no source).
          </p>
          <EntryForm
            name="Aftercare"
            draftKey={`aftercare.${state.caseId}`}
            records="aftercare-planned"
            initial={aftercareValues(state)}
            fields={(values) => aftercareFields(state, values)}
            word="Sign the aftercare"
            outcome={(values) => aftercareOutcome(state, values)}
            append={append}
          />
        </>
      )}
      <PrintPapers caseId={state.caseId} papers={[['discharge', 'Discharge sheet']]} />
    </section>
  );
}

function AsItStands({ state }: { readonly state: CaseState }) {
  const signed = state.care.aftercare;
  if (!signed) return <p className="quiet">No aftercare is written yet.</p>;
  const { tasks, lookFor, ringWhen, phone, housing, recheckOn } = signed.value;
  return (
    <div className="aftercare">
      <div className="callout callout-stop">
        <strong>Ring now if</strong>
        <ul className="entry-missing">
          {ringWhen.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {phone && (
          <a className="button" href={`tel:${phone.replaceAll(/[^+\d]/g, '')}`}>
            Ring {phone}
          </a>
        )}
      </div>
      <ul className="aftercare-tasks">
        {tasks.map(({ what, when, doseId }) => {
          const dose = state.doses.find((one) => one.doseId === doseId);
          return (
            <li key={`${what} ${when}`}>
              <strong>{what}</strong>
              {dose?.signed ? `, ${dose.signed.value.drawnMl} ml` : ''}, {when}
              {dose?.voided ? ' (this dose was voided: do not give it, ask)' : ''}
            </li>
          );
        })}
      </ul>
      {lookFor.length > 0 && <p>Look for: {lookFor.join('; ')}.</p>}
      {housing && <p>{housing}</p>}
      <p>{recheckOn ? `Next look on ${dayWords(recheckOn)}.` : 'No day is set for the next look.'}</p>
      <p className="caption">{`Signed by ${signed.by}, ${moment(signed.at)}.`}</p>
    </div>
  );
}
