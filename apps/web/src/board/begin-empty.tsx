/** Takes the invented patients out, after asking. Real patients are not touched. */
import { useId, useRef, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import { beginEmpty } from '../sync/api.ts';

export function BeginEmpty() {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const [why, setWhy] = useState<string | null>(null);
  const empty = async () => {
    try {
      await beginEmpty();
      dialog.current?.close();
    } catch (error) {
      setWhy(`Nothing was taken out: ${error instanceof Error ? error.message : String(error)}.`);
    }
  };
  return (
    <>
      <button type="button" className="button" onClick={() => dialog.current?.showModal()}>
        Begin empty
      </button>
      <dialog ref={dialog} className="dialog" aria-labelledby={title}>
        <h2 id={title}>Begin empty</h2>
        <p>The invented patients go, with their films. Real patients stay as they are.</p>
        {why && <FieldWhy why={why} />}
        <p className="dialog-foot">
          <button type="button" className="button button-main" onClick={() => void empty()}>
            Take the demonstration out
          </button>
          <button type="button" className="button" onClick={() => dialog.current?.close()}>
            Keep it
          </button>
        </p>
      </dialog>
    </>
  );
}
