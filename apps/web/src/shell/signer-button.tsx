/** Who signs on this device, and changing it. */
import { useId, useRef, useState } from 'react';
import { NOBODY_NAMED, setSigner, useSigner } from '../sync/signer.ts';

export function SignerButton() {
  const name = useSigner();
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const [text, setText] = useState('');
  const ask = () => {
    setText(name === NOBODY_NAMED ? '' : name);
    dialog.current?.showModal();
  };
  return (
    <>
      <button type="button" className="link signer" onClick={ask}>
        {name === NOBODY_NAMED ? 'say who signs' : `signs: ${name}`}
      </button>
      <dialog ref={dialog} className="dialog" aria-labelledby={`${id}-title`}>
        <form method="dialog" onSubmit={() => setSigner(text)}>
          <h2 id={`${id}-title`}>Who signs on this device</h2>
          <div className="field">
            <label htmlFor={id}>Name, as it should stand in the record</label>
            <span className="field-box">
              <input
                id={id}
                value={text}
                maxLength={200}
                autoComplete="name"
                onChange={(e) => setText(e.target.value)}
              />
            </span>
            <span className="caption">Every entry from here on carries it. Earlier ones keep theirs.</span>
          </div>
          <p className="dialog-foot">
            <button type="submit" className="button button-main">
              Keep
            </button>
            <button type="button" className="button" onClick={() => dialog.current?.close()}>
              Leave it
            </button>
          </p>
        </form>
      </dialog>
    </>
  );
}
