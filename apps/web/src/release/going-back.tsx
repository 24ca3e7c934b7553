/** The release itself. It refuses nothing; what is not met is listed, and a reason goes into the record. */
import { type CaseState, releaseGaps } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { fromField, moment, today, toField } from '../words/time.ts';

interface GoingBackProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'at' | 'place' | 'isWhereFound' | 'with' | 'words';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'time', key: 'at', label: 'Released at' },
  {
    kind: 'choice',
    key: 'isWhereFound',
    label: 'Where it was found',
    options: [
      ['yes', 'yes'],
      ['no', 'elsewhere'],
    ],
  },
  { kind: 'text', key: 'place', label: 'Place', isWide: true },
  {
    kind: 'text',
    key: 'with',
    label: 'What went with it',
    isWide: true,
    help: 'A box with straw to settle from, food on the first nights, a ring or chip number. Sources differ on food afterwards.',
  },
  { kind: 'text', key: 'words', label: 'How it went off', isWide: true },
];

export function GoingBack({ state, append }: GoingBackProps) {
  const { released } = state.course;
  const gaps = releaseGaps(state, today());
  const place = state.admission.noted?.value.place;
  const form = (
    <EntryForm
      name="Release"
      draftKey={`released.${state.caseId}`}
      records="released"
      initial={{ at: toField(new Date()), place: place?.words ?? '', isWhereFound: '', with: '', words: '' }}
      fields={() => FIELDS}
      word="Record the release"
      outcome={(values) => releaseOutcome(state, values)}
      append={append}
    />
  );
  return (
    <section aria-labelledby="going-title">
      <h2 id="going-title">Going back</h2>
      {released && (
        <p className="decision-stands">
          {`Released ${moment(released.value.at)} at ${released.value.place}${released.value.isWhereFound ? ', where it was found' : ''}. Signed ${released.by}.${released.why ? ` What was not met: ${released.why}` : ''}`}
        </p>
      )}
      {!released && gaps.length > 0 && (
        <details>
          <summary>
            {gaps.length === 1 ? '1 thing is' : `${gaps.length} things are`} not met; release will ask for a reason
          </summary>
          <ul className="entry-missing">
            {gaps.map((gap) => (
              <li key={gap}>{gap}</li>
            ))}
          </ul>
        </details>
      )}
      {released ? (
        <details>
          <summary>Write it again</summary>
          {form}
        </details>
      ) : (
        form
      )}
    </section>
  );
}

const COMMON = ['lighter than that, but eats and grows', 'no film of it walking', 'decided with the rescue'];

function releaseOutcome(state: CaseState, values: Values<Key>): Outcome<Key> {
  const at = fromField(values.at);
  const place = values.place.trim();
  if (at === null) return { faults: { at: 'Say when.' } };
  if (values.isWhereFound === '') return { faults: { isWhereFound: 'Say whether that is where it was found.' } };
  if (place === '') return { faults: { place: 'Say where.' } };
  const isWhereFound = values.isWhereFound === 'yes';
  const payload = { at, place, isWhereFound, with: values.with.trim(), words: values.words.trim() };
  const entries = [{ kind: 'released' as const, payload }];
  const missing = releaseGaps(state, values.at.slice(0, 10));
  return missing.length === 0 ? { entries } : { ask: 'Not everything is met', missing, common: COMMON, entries };
}
