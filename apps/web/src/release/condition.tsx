/** Condition of a hedgehog by two girths, with what can and cannot be said of it. */
import { type CaseState, isFrameOn } from '@bonewright/casebook';
import { conditionIndex } from '@bonewright/ward';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { moment } from '../words/time.ts';

interface ConditionProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'middle' | 'headToTail' | 'isMet';
const ITEM = 'condition-index';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'number', key: 'middle', label: 'Girth round the middle', unit: 'mm' },
  { kind: 'number', key: 'headToTail', label: 'Girth from head to tail', unit: 'mm' },
  {
    kind: 'choice',
    key: 'isMet',
    label: 'In good condition, by the index and by hand',
    isWide: true,
    options: [
      ['yes', 'yes'],
      ['no', 'no'],
    ],
  },
];

export function Condition({ state, append }: ConditionProps) {
  const said = state.course.readiness.find(({ value }) => value.item === ITEM);
  return (
    <section aria-labelledby="condition-title">
      <h2 id="condition-title">Condition index</h2>
      <p className="quiet">
        Measured on the tightly curled animal. It says nothing of one that does not curl, and little of a pregnant one.
      </p>
      {isFrameOn(state) ? (
        <p>{conditionIndex({ middleMm: 1, headToTailMm: 1, hasFrame: true }).because}</p>
      ) : (
        <EntryForm
          name="Condition index"
          draftKey={`condition.${state.caseId}`}
          records="readiness-noted"
          initial={{ middle: '', headToTail: '', isMet: '' }}
          fields={() => FIELDS}
          word="Work it out and record it"
          outcome={conditionOutcome}
          append={append}
        />
      )}
      {said && <p>{`${said.value.words} ${said.by}, ${moment(said.at)}.`}</p>}
    </section>
  );
}

function conditionOutcome({ middle, headToTail, isMet }: Values<Key>): Outcome<Key> {
  const [middleMm, headToTailMm] = [readNumber(middle), readNumber(headToTail)];
  if (middleMm === null || middleMm <= 0) return { faults: { middle: numberFault(middle) ?? 'Measure it in mm.' } };
  if (headToTailMm === null || headToTailMm <= 0)
    return { faults: { headToTail: numberFault(headToTail) ?? 'Measure it in mm.' } };
  if (isMet !== 'yes' && isMet !== 'no') return { faults: { isMet: 'The index decides nothing: say what you found.' } };
  const { index, because } = conditionIndex({ middleMm, headToTailMm, hasFrame: false });
  const words = `${index?.toFixed(2)} (${middleMm} mm over ${headToTailMm} mm). ${because}`;
  return { entries: [{ kind: 'readiness-noted', payload: { item: ITEM, isMet, words } }] };
}
