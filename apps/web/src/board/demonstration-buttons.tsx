/** Brings the invented patients back as they were, or takes them out; both after asking. Real patients are not touched. */
import { useId, useRef, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import { beginEmpty, resetDemonstration } from '../sync/api.ts';

export function DemonstrationButtons() {
  return (
    <>
      <AskedButton
        word="Begin again"
        says="The invented patients come back as they were at first; whatever was tried on them goes. Real patients stay as they are. The films are drawn anew, which takes a minute or two."
        yes="Bring the demonstration back"
        no="Leave it as it is"
        failed="Nothing was brought back"
        act={resetDemonstration}
      />
      <AskedButton
        word="Begin empty"
        says="The invented patients go, with their films. Real patients stay as they are."
        yes="Take the demonstration out"
        no="Keep it"
        failed="Nothing was taken out"
        act={beginEmpty}
      />
    </>
  );
}

interface AskedButtonProps {
  readonly word: string;
  readonly says: string;
  readonly yes: string;
  readonly no: string;
  readonly failed: string;
  readonly act: () => Promise<unknown>;
}

function AskedButton({ word, says, yes, no, failed, act }: AskedButtonProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const [why, setWhy] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const doIt = async () => {
    setBusy(true);
    setWhy(null);
    try {
      await act();
      dialog.current?.close();
    } catch (error) {
      setWhy(`${failed}: ${error instanceof Error ? error.message : String(error)}.`);
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <button type="button" className="button" onClick={() => dialog.current?.showModal()}>
        {word}
      </button>
      <dialog ref={dialog} className="dialog" aria-labelledby={title}>
        <h2 id={title}>{word}</h2>
        <p>{says}</p>
        {why && <FieldWhy why={why} />}
        <p className="dialog-foot">
          <button type="button" className="button button-main" disabled={isBusy} onClick={() => void doIt()}>
            {yes}
          </button>
          <button type="button" className="button" onClick={() => dialog.current?.close()}>
            {no}
          </button>
        </p>
      </dialog>
    </>
  );
}
