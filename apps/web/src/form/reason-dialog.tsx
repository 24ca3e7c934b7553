/** Asks why: reasons that are common, or one's own words. Nothing is recorded without one. */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';

interface ReasonDialogProps {
  readonly title: string;
  readonly common: readonly string[];
  /** What can be done with the reason; the first is the usual one. */
  readonly actions: readonly { readonly word: string; readonly act: (why: string) => void }[];
  readonly onClose: () => void;
  readonly children?: ReactNode;
}

const LONGEST = 200;

export function ReasonDialog({ title, common, actions, onClose, children }: ReasonDialogProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const [why, setWhy] = useState('');
  useEffect(() => dialog.current?.showModal(), []);
  const said = why.trim();
  return (
    <dialog ref={dialog} className="dialog reason-dialog" aria-labelledby={`${id}-title`} onClose={onClose}>
      <h2 id={`${id}-title`}>{title}</h2>
      {children}
      <div className="field">
        <label htmlFor={id}>Why</label>
        <span className="field-box">
          <input
            id={id}
            value={why}
            maxLength={LONGEST}
            autoComplete="off"
            onChange={(event) => setWhy(event.target.value)}
          />
        </span>
      </div>
      <div className="reason-common">
        {common.map((reason) => (
          <button key={reason} type="button" className="button" onClick={() => setWhy(reason)}>
            {reason}
          </button>
        ))}
      </div>
      <p className="dialog-foot">
        {actions.map(({ word, act }, i) => (
          <button
            key={word}
            type="button"
            className={i === 0 ? 'button button-main' : 'button'}
            disabled={said === ''}
            onClick={() => {
              act(said);
              dialog.current?.close();
            }}
          >
            {word}
          </button>
        ))}
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Go back
        </button>
      </p>
    </dialog>
  );
}
