/** Questions of carers to the vet, and what was answered. */
import { type CaseState, mayRecord, type Question } from '@bonewright/casebook';
import { EntryForm, type FieldSpec } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { randomId } from '../sync/random-id.ts';
import { useRole } from '../sync/session.ts';
import { moment } from '../words/time.ts';

interface QuestionsProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function Questions({ state, append }: QuestionsProps) {
  return (
    <section aria-labelledby="questions-title">
      <h2 id="questions-title">Questions to the vet</h2>
      {state.care.questions.toReversed().map((question) => (
        <OneQuestion key={question.asked.value.questionId} question={question} state={state} append={append} />
      ))}
      <EntryForm
        name="Question to the vet"
        draftKey={`question.${state.caseId}`}
        records="question-asked"
        initial={{ words: '' }}
        fields={() => ASK}
        word="Ask"
        outcome={({ words }) => {
          if (words.trim() === '') return { faults: { words: 'Write the question.' } };
          const payload = { questionId: randomId(), at: new Date().toISOString(), words: words.trim() };
          return { entries: [{ kind: 'question-asked', payload }] };
        }}
        append={append}
      />
    </section>
  );
}

const ASK: readonly FieldSpec<'words'>[] = [
  {
    kind: 'area',
    key: 'words',
    label: 'Question',
    isWide: true,
    help: 'Nobody is rung by this. If it cannot wait, ring.',
  },
];
const ANSWER: readonly FieldSpec<'words'>[] = [{ kind: 'area', key: 'words', label: 'Answer', isWide: true }];

function OneQuestion({
  question: { asked, answered },
  state,
  append,
}: QuestionsProps & { readonly question: Question }) {
  const isOwnToAnswer = mayRecord(useRole(), 'question-answered');
  const { questionId, words, at } = asked.value;
  return (
    <div className="question">
      <p>
        <strong>{words}</strong> <span className="caption">{`${asked.by}, ${moment(at)}`}</span>
      </p>
      {answered && (
        <p>
          {answered.value.words} <span className="caption">{`${answered.by}, ${moment(answered.at)}`}</span>
        </p>
      )}
      {!answered && !isOwnToAnswer && <p className="quiet">Not answered yet.</p>}
      {!answered && isOwnToAnswer && (
        <EntryForm
          name={`Answer to: ${words}`}
          draftKey={`answer.${state.caseId}.${questionId}`}
          records="question-answered"
          initial={{ words: '' }}
          fields={() => ANSWER}
          word="Answer"
          outcome={(values) =>
            values.words.trim() === ''
              ? { faults: { words: 'Write the answer.' } }
              : {
                  entries: [{ kind: 'question-answered', payload: { questionId, words: values.words.trim() } }],
                }
          }
          append={append}
        />
      )}
    </div>
  );
}
