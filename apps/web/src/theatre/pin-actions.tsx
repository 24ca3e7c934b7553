/** What is done with the pin in hand: it is in, it will not go in, or what was entered is corrected, each an entry of its own. */
import type { InTheatre } from '@bonewright/construct';
import { useState } from 'react';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import { figure } from '../plan/words.ts';
import type { Append } from '../sync/new-event.ts';
import { placedOf } from './entry-draft.ts';
import type { PinInHand } from './pin-by-pin.tsx';

interface PinActionsProps {
  readonly theatre: InTheatre;
  readonly hand: PinInHand;
  /** The pin after this one; null where none is left. */
  readonly next: number | null;
  readonly append: Append;
  readonly onDone: () => void;
  readonly onBack: (pin: number) => void;
}

type Asking = 'cannot' | 'correct' | 'take back' | null;

const CANNOT = ['the bone splits', 'the wire skids off', 'a vessel or nerve lies there', 'no room beside the IM pin'];
const CORRECT = ['typed wrongly', 'it was moved', 'measured again on a film'];
const BACK = ['typed for the wrong pin', 'it was drawn again', 'it came loose'];

export function PinActions({ theatre, hand, next, append, onDone, onBack }: PinActionsProps) {
  const [asking, ask] = useState<Asking>(null);
  const { pin, draft, isIn, isLeftOut } = hand;
  const last = theatre.placed.filter((each) => each.pin !== pin).at(-1);
  const enter = (why?: string) => {
    append([{ kind: 'pin-placed', payload: placedOf(draft), ...(why ? { why } : {}) }]);
    onDone();
  };
  const skip = (why: string, triedMm: number | null) => {
    append([{ kind: 'pin-skipped', payload: { pin, why, triedMm } }]);
    onDone();
  };
  const takeBack = (why: string) => {
    append([{ kind: 'pin-taken-back', payload: { pin }, why }]);
    onDone();
  };
  const go = next === null ? 'that was the last' : `go to P${next}`;
  return (
    <div className="theatre-actions">
      {isIn || isLeftOut ? (
        <button
          type="button"
          className="button"
          onClick={() => (isIn ? ask('take back') : takeBack('to be placed after all'))}
        >
          {isIn ? 'Take the entry back' : 'Place it after all'}
        </button>
      ) : (
        <button type="button" className="button" onClick={() => ask('cannot')}>
          Cannot place it
        </button>
      )}
      {last && !isIn && (
        <button type="button" className="button" onClick={() => onBack(last.pin)}>
          Back to P{last.pin}
        </button>
      )}
      {isIn && next !== null && (
        <button type="button" className="button" onClick={onDone}>
          Leave it, go to P{next}
        </button>
      )}
      <button type="button" className="button button-main" onClick={() => (isIn ? ask('correct') : enter())}>
        {isIn ? `Correct P${pin} to ${figure(draft.sMm)}` : `P${pin} is in at ${figure(draft.sMm)}, ${go}`}
      </button>
      {asking === 'cannot' && (
        <ReasonDialog
          title={`P${pin} will not go in at ${figure(draft.sMm)} mm`}
          common={CANNOT}
          actions={[
            { word: 'Plan it elsewhere', act: (why) => skip(why, draft.sMm) },
            { word: 'Leave it out', act: (why) => skip(why, null) },
          ]}
          onClose={() => ask(null)}
        />
      )}
      {asking === 'correct' && (
        <ReasonDialog
          title={`P${pin} stands at ${figure(draft.sMm)} mm`}
          common={CORRECT}
          actions={[{ word: 'Correct the entry', act: enter }]}
          onClose={() => ask(null)}
        >
          <p className="quiet">The first entry stays in the record, with this beside it.</p>
        </ReasonDialog>
      )}
      {asking === 'take back' && (
        <ReasonDialog
          title={`P${pin} is not in`}
          common={BACK}
          actions={[{ word: 'Take the entry back', act: takeBack }]}
          onClose={() => ask(null)}
        />
      )}
    </div>
  );
}
