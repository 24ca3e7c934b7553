/** A list that is gone through before a step: each line answered with one press, with words beside it; the last word stands. */
import { type CaseState, mayRecord } from '@bonewright/casebook';
import type { ReadyItem } from '@bonewright/ward';
import { useId, useState } from 'react';
import { Choice } from '../form/choice.tsx';
import { Field } from '../form/field.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { useDraft } from '../sync/use-draft.ts';
import { moment } from '../words/time.ts';

interface ReadinessListProps {
  readonly title: string;
  readonly items: readonly ReadyItem[];
  readonly state: CaseState;
  readonly append: Append;
}

const ANSWERS = [
  ['yes', 'yes'],
  ['no', 'no'],
  ['not looked', 'not looked'],
  ['does not apply', 'does not apply'],
] as const;
type Answer = (typeof ANSWERS)[number][0];

export function ReadinessList({ title, items, state, append }: ReadinessListProps) {
  const id = useId();
  const isSettled = (id: string): boolean =>
    state.course.readiness.some(
      ({ value: { item, isMet } }) => item === id && (isMet === 'yes' || isMet === 'does not apply'),
    );
  const done = items.filter(({ id }) => isSettled(id)).length;
  return (
    <section aria-labelledby={id} className="ready">
      <header className="story-head">
        <h2 id={id}>{title}</h2>
        <span className="quiet" role="status">
          {done} of {items.length} met
        </span>
      </header>
      <ul className="ready-list">
        {items.map((item) => (
          <ReadyLine key={item.id} item={item} state={state} append={append} />
        ))}
      </ul>
    </section>
  );
}

interface ReadyLineProps extends Pick<ReadinessListProps, 'state' | 'append'> {
  readonly item: ReadyItem;
}

function ReadyLine({ item, state, append }: ReadyLineProps) {
  const said = state.course.readiness.find(({ value }) => value.item === item.id);
  const isOwnToRecord = mayRecord(useRole(), 'readiness-noted');
  const draft = useDraft(`ready.${state.caseId}.${item.id}`, readTouched);
  const words = draft.value ?? said?.value.words ?? '';
  const [why, setWhy] = useState<string | null>(null);
  const record = (isMet: Answer) => {
    const text = words.trim();
    if (isMet === 'does not apply' && text === '') {
      setWhy('Say first why it does not apply.');
      return;
    }
    setWhy(null);
    append([{ kind: 'readiness-noted', payload: { item: item.id, isMet, words: text } }]);
    draft.clear();
  };
  const recordWords = () => {
    if (said && words.trim() !== said.value.words) record(said.value.isMet);
  };
  return (
    <li>
      <div>
        <p className="ready-asks">{item.asks}</p>
        <p className="caption">
          {item.why} <span>({item.source})</span>
        </p>
      </div>
      {isOwnToRecord ? (
        <div className="ready-answer">
          <Choice
            label={item.asks}
            isLabelHidden
            options={ANSWERS}
            value={said?.value.isMet ?? null}
            onChange={record}
            why={why}
          />
          <Field label="What was seen" value={words} onChange={draft.set} onBlur={recordWords} onEnter={recordWords} />
        </div>
      ) : (
        <p>{`${said?.value.isMet ?? 'not looked'}${said?.value.words ? `: ${said.value.words}` : ''}`}</p>
      )}
      {said && (
        <p className="caption ready-signed">
          {said.by}, {moment(said.at)}
        </p>
      )}
    </li>
  );
}

/** Null where nobody touched it: what was recorded shows. */
const readTouched = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);
