/** What the practice has in its drawer, edited as a whole and kept in the record of the case. */
import './drawer.css';
import type { Drawer } from '@bonewright/construct';
import { useEffect, useRef, useState } from 'react';
import { ColumnRows, ImRows, PinRows } from './drawer-rows.tsx';
import { withNames } from './naming.ts';

interface DrawerDialogProps {
  readonly drawer: Drawer;
  /** True where nobody has said yet what the drawer holds. */
  readonly isStart: boolean;
  readonly onKeep: (drawer: Drawer) => void;
  readonly onClose: () => void;
}

export function DrawerDialog({ drawer, isStart, onKeep, onClose }: DrawerDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [draft, setDraft] = useState(drawer);
  useEffect(() => dialog.current?.showModal(), []);
  const nothing = draft.pins.length === 0 || draft.columns.length === 0;
  const keep = () => {
    const wrong = dialog.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (wrong) return wrong.focus();
    onKeep(withNames(draft, drawer));
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} className="drawer-dialog" aria-labelledby="drawer-title" onClose={onClose}>
      <header className="side-head">
        <h2 id="drawer-title">The drawer</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      {isStart && (
        <p className="quiet">Common sizes to begin with. Correct them to what lies in your drawer, then keep it.</p>
      )}
      <PinRows draft={draft} onChange={setDraft} />
      <ImRows draft={draft} onChange={setDraft} />
      <ColumnRows draft={draft} onChange={setDraft} />
      <footer className="drawer-foot">
        <button type="button" className="button button-main" disabled={nothing} onClick={keep}>
          Keep this drawer
        </button>
        {nothing && <span className="field-why">A plan needs at least one pin and one column.</span>}
      </footer>
    </dialog>
  );
}
