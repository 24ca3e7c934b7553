/** The ruler with its keys, the selected pin's readout, and what the whole construct is made of. */
import type { Case, Construct, Plan } from '@bonewright/construct';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { addPin, removePin } from '../edit/edits.ts';
import type { ConstructHistory } from '../edit/use-history.ts';
import { useStable } from '../use-stable.ts';
import { ConstructFields } from './construct-fields.tsx';
import { Readout } from './readout.tsx';
import { Ruler } from './ruler.tsx';

interface RulerPanelProps {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly placement: Placement;
  readonly plan: Plan | null;
  readonly selected: number;
  readonly onSelect: (index: number) => void;
  readonly history: ConstructHistory;
}

export function RulerPanel(props: RulerPanelProps) {
  const { patientCase, construct, placement, plan, selected, onSelect, history } = props;
  const change = useStable((edit: (now: Construct) => Construct) => history.change(edit(construct)));
  return (
    <section className="ruler-panel" aria-labelledby="ruler-title">
      <header className="side-head">
        <h2 id="ruler-title">The bone along its ruler</h2>
        <p className="quiet ruler-keys">
          drag a pin, or <kbd>←</kbd> <kbd>→</kbd> 0.5 mm, <kbd>↑</kbd> <kbd>↓</kbd> turn, <kbd>Alt</kbd> <kbd>→</kbd>{' '}
          tilt
        </p>
        <span className="ruler-undo">
          <button type="button" className="button-small" onClick={() => history.change(addPin(construct, patientCase))}>
            Add a pin
          </button>
          <button
            type="button"
            className="button-small"
            disabled={construct.pins.length < 2}
            onClick={() => history.change(removePin(construct, selected))}
          >
            {`Take P${selected + 1} out`}
          </button>
          <button type="button" className="button-small" disabled={!history.canUndo} onClick={history.undo}>
            Undo <kbd>Z</kbd>
          </button>
          <button type="button" className="button-small" disabled={!history.canRedo} onClick={history.redo}>
            Redo <kbd>⇧Z</kbd>
          </button>
        </span>
      </header>
      <div className="ruler-body">
        <div className="ruler-work">
          <Ruler
            {...{ patientCase, construct, placement, plan, selected }}
            edit={{ onSelect, change: history.change }}
          />
          <ConstructFields drawer={patientCase.drawer} im={construct.im} column={construct.column} change={change} />
        </div>
        <Readout
          patientCase={patientCase}
          construct={construct}
          plan={plan}
          index={selected}
          placement={placement}
          change={history.change}
        />
      </div>
    </section>
  );
}
