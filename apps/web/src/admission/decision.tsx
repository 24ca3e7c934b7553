/** What can be done, what each asks for, and what was decided by whom. */
import { type CaseState, COURSES } from '@bonewright/casebook';
import { alternativesFor } from '@bonewright/ward';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { capital } from '../words/patient.ts';
import { moment } from '../words/time.ts';

interface DecisionProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'course' | 'decidedBy' | 'why';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'choice', key: 'course', label: 'Decided', isWide: true, options: COURSES.map((c) => [c, c] as const) },
  { kind: 'text', key: 'decidedBy', label: 'By whom', help: 'The person, where that is not who signs.' },
  { kind: 'text', key: 'why', label: 'Because' },
];

export function Decision({ state, append }: DecisionProps) {
  const { noted, decisions } = state.admission;
  const species = state.patient?.value.species ?? '';
  const initial = { course: '', decidedBy: noted?.value.decides ?? '', why: '' };
  return (
    <section aria-labelledby="decision-title" className="decision">
      <h2 id="decision-title">What can be done</h2>
      <dl className="alternatives">
        {alternativesFor(species).map(({ course, asks, known }) => (
          <div key={course}>
            <dt>{capital(course)}</dt>
            <dd>
              {asks}
              {known.map((words) => (
                <span key={words} className="caption">
                  {words}
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      {decisions.toReversed().map(({ value, by, at, seq, why }, i) => (
        <p key={seq} className={i === 0 ? 'decision-stands' : 'quiet'}>
          {`${i === 0 ? 'Decided' : 'Before'}: ${value.course}, by ${value.decidedBy}${why ? `, because ${why}` : ''}. Signed ${by}, ${moment(at)}.`}
        </p>
      ))}
      <EntryForm
        name="Decision"
        draftKey={`decision.${state.caseId}`}
        records="course-decided"
        initial={initial}
        fields={() => FIELDS}
        word="Record the decision"
        outcome={decisionOutcome}
        append={append}
      />
    </section>
  );
}

function decisionOutcome({ course, decidedBy, why }: Values<Key>): Outcome<Key> {
  const decided = COURSES.find((one) => one === course);
  if (!decided) return { faults: { course: 'Choose what was decided.' } };
  if (decidedBy.trim() === '') return { faults: { decidedBy: 'Say who decided.' } };
  const payload = { course: decided, decidedBy: decidedBy.trim() };
  return { entries: [{ kind: 'course-decided', payload, ...(why.trim() ? { why: why.trim() } : {}) }] };
}
