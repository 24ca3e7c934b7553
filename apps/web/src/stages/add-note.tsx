/** A signed note; what is typed is kept on this device until it is recorded. */
import type { Stage } from '@bonewright/casebook';
import { useId } from 'react';
import type { Append } from '../sync/new-event.ts';
import { useDraft } from '../sync/use-draft.ts';

interface AddNoteProps {
  readonly caseId: string;
  readonly stage: Stage;
  readonly append: Append;
}

const readText = (kept: unknown): string => (typeof kept === 'string' ? kept : '');
const LONGEST = 20_000;

export function AddNote({ caseId, stage, append }: AddNoteProps) {
  const id = useId();
  const draft = useDraft(`note.${caseId}.${stage}`, readText);
  const text = draft.value.trim();
  const add = () => {
    append([{ kind: 'note-added', payload: { text, stage } }]);
    draft.clear();
  };
  return (
    <form
      className="add-note"
      onSubmit={(event) => {
        event.preventDefault();
        if (text) add();
      }}
    >
      <div className="field">
        <label htmlFor={id}>Note</label>
        <span className="field-box">
          <textarea
            id={id}
            rows={4}
            maxLength={LONGEST}
            value={draft.value}
            onChange={(event) => draft.set(event.target.value)}
          />
        </span>
      </div>
      <p>
        <button type="submit" className="button" disabled={!text}>
          Add the note
        </button>
      </p>
    </form>
  );
}
