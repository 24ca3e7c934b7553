/** How the limb is used, in words: no scale is agreed. */
import type { CaseState } from '@bonewright/casebook';
import { animalsOf } from '@bonewright/ward';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { moment } from '../words/time.ts';

interface LimbUseProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'grade' | 'words';
const WORDS = {
  mammals: ['not at all', 'touches the ground', 'some weight', 'as the other side'],
  birds: ['not at all', 'a little', 'most of what it should', 'as the other side'],
};

export function LimbUse({ state, append }: LimbUseProps) {
  const options = WORDS[animalsOf(state.patient?.value.species ?? '')].map((word) => [word, word] as const);
  const fields: readonly FieldSpec<Key>[] = [
    { kind: 'choice', key: 'grade', label: 'The limb is used', isWide: true, options },
    {
      kind: 'text',
      key: 'words',
      label: 'In words',
      isWide: true,
      help: 'On which floor, how fast, which way it turns.',
    },
  ];
  return (
    <section aria-labelledby="limb-title">
      <h2 id="limb-title">Use of the limb</h2>
      <p className="quiet">
        No validated scale exists; several that do not fit each other are in use (0 to 2, 0 to 5, 1 to 5). So it is said
        in words.
      </p>
      {state.care.limbUse.slice(-3).map(({ value, by, seq }) => (
        <p key={seq}>{`${moment(value.at)}: ${value.grade}${value.words ? `, ${value.words}` : ''} (${by})`}</p>
      ))}
      <EntryForm
        name="Use of the limb"
        draftKey={`limb.${state.caseId}`}
        records="limb-use-seen"
        initial={{ grade: '', words: '' }}
        fields={() => fields}
        word="Record the use"
        outcome={limbOutcome}
        append={append}
      />
    </section>
  );
}

function limbOutcome({ grade, words }: Values<Key>): Outcome<Key> {
  if (grade === '') return { faults: { grade: 'Choose one.' } };
  const payload = { at: new Date().toISOString(), scale: 'plain words', grade, words: words.trim() };
  return { entries: [{ kind: 'limb-use-seen', payload }] };
}
