/** A meal: what was offered and how much of it was eaten. */
import type { CaseState } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { fromField, moment, toField } from '../words/time.ts';

interface FeedProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'feed' | 'grams' | 'ate' | 'at' | 'note';
const ATE = ['all', 'most', 'some', 'nothing'] as const;

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'text', key: 'feed', label: 'Fed with' },
  { kind: 'number', key: 'grams', label: 'How much', unit: 'g', help: 'Left empty: not weighed.' },
  { kind: 'choice', key: 'ate', label: 'Ate', options: ATE.map((word) => [word, word] as const) },
  { kind: 'time', key: 'at', label: 'Fed at' },
  { kind: 'text', key: 'note', label: 'Droppings, drinking, anything odd', isWide: true },
];

export function Feed({ state, append }: FeedProps) {
  const last = state.care.meals.at(-1);
  return (
    <section aria-labelledby="feed-title">
      <h2 id="feed-title">Feed</h2>
      {last && (
        <p>{`Last: ${moment(last.value.at)}, ${last.value.feed}${last.value.grams === null ? '' : `, ${last.value.grams} g`}, ate ${last.value.ate} (${last.by})`}</p>
      )}
      <EntryForm
        name="Feed"
        draftKey={`feed.${state.caseId}`}
        records="fed"
        initial={{ feed: last?.value.feed ?? '', grams: '', ate: '', at: toField(new Date()), note: '' }}
        fields={() => FIELDS}
        word="Record the meal"
        outcome={feedOutcome}
        append={append}
      />
    </section>
  );
}

function feedOutcome({ feed, grams, ate, at, note }: Values<Key>): Outcome<Key> {
  const when = fromField(at);
  const eaten = ATE.find((one) => one === ate);
  const fault = numberFault(grams, { from0: true });
  if (feed.trim() === '') return { faults: { feed: 'Say what it was fed with.' } };
  if (fault) return { faults: { grams: fault } };
  if (!eaten) return { faults: { ate: 'Say how much of it was eaten.' } };
  if (when === null) return { faults: { at: 'Say when.' } };
  const payload = { at: when, feed: feed.trim(), grams: readNumber(grams), ate: eaten, note: note.trim() };
  return { entries: [{ kind: 'fed', payload }] };
}
