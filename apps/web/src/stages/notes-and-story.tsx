/** At the foot of every stage: a note to add, and the record as it stands. */
import type { CaseState, RecordedEvent, Stage } from '@bonewright/casebook';
import { useId } from 'react';
import type { Append } from '../sync/new-event.ts';
import { AddNote } from './add-note.tsx';
import { Story } from './story.tsx';

interface NotesAndStoryProps {
  readonly stage: Stage;
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

export function NotesAndStory({ stage, state, recorded, append }: NotesAndStoryProps) {
  const id = useId();
  return (
    <div className="stage-page">
      <section aria-labelledby={id}>
        <h2 id={id}>Notes</h2>
        <AddNote stage={stage} caseId={state.caseId} append={append} />
      </section>
      <Story recorded={recorded} />
    </div>
  );
}
