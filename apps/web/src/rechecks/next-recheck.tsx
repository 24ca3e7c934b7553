/** When the patient is looked at next, what for, and by whom. */
import type { CaseState } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { dayWords } from '../words/time.ts';

interface NextRecheckProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'on' | 'who' | 'what';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'day', key: 'on', label: 'On' },
  { kind: 'text', key: 'who', label: 'Who' },
  {
    kind: 'text',
    key: 'what',
    label: 'What for',
    isWide: true,
    options: ['film, two views', 'frame and pin sites', 'weight and use of the limb', 'take the frame down in part'],
  },
];

export function NextRecheck({ state, append }: NextRecheckProps) {
  return (
    <section aria-labelledby="next-title">
      <h2 id="next-title">Next look</h2>
      <p className="quiet">
        In dogs and cats films every four to six weeks are advised; small animals are commonly seen every ten to
        fourteen days, the frame every week (from memory, a judgement).
      </p>
      {state.course.rechecks.map(({ value, by, seq }) => (
        <p key={seq}>{`${dayWords(value.on)}: ${value.what}${value.who ? `, ${value.who}` : ''} (set by ${by})`}</p>
      ))}
      <EntryForm
        name="Next look"
        draftKey={`recheck.${state.caseId}`}
        records="recheck-set"
        initial={{ on: '', who: '', what: '' }}
        fields={() => FIELDS}
        word="Set it"
        outcome={recheckOutcome}
        append={append}
      />
    </section>
  );
}

function recheckOutcome({ on, who, what }: Values<Key>): Outcome<Key> {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(on)) return { faults: { on: 'Say on which day.' } };
  if (what.trim() === '') return { faults: { what: 'Say what for.' } };
  return { entries: [{ kind: 'recheck-set', payload: { on, what: what.trim(), who: who.trim() } }] };
}
