/** How to look at a film: its own looks, window by two sliders, zoom, white and black swapped. */
import type { NamedLook, Window } from '@bonewright/film';
import { useId } from 'react';
import { Choice } from '../../form/choice.tsx';
import type { Looking } from './looking.ts';
import type { LinkedLevels } from './use-levels.ts';

interface PlateToolsProps {
  readonly looks: readonly NamedLook[];
  readonly looking: Looking;
  readonly range: readonly [number, number];
  readonly linked: LinkedLevels;
  readonly isWhole: boolean;
  readonly hasLoupe: boolean;
  readonly onChoose: (look: NamedLook) => void;
  readonly onWindow: (window: Window) => void;
  readonly onSwap: () => void;
  readonly onZoom: (factor: number) => void;
  readonly onWhole: () => void;
  readonly onQuarter: () => void;
  readonly onFlip: () => void;
  readonly onLoupe: () => void;
  /** Null until the bone is traced. */
  readonly onBone: (() => void) | null;
}

const BY_HAND = 'by hand';
const LINKS = [
  ['linked', 'levels linked'],
  ['apart', 'levels apart'],
] as const;

export function PlateTools(props: PlateToolsProps) {
  const { looks, looking, range, linked, isWhole, hasLoupe, onChoose, onWindow, onSwap, onZoom, onWhole, onBone } =
    props;
  const { window } = looking;
  const id = useId();
  const span = Math.max(1, range[1] - range[0]);
  return (
    <div className="plate-tools">
      <span className="plate-tools-group">
        <button type="button" className="button-small" onClick={() => onZoom(Math.SQRT2)}>
          + nearer
        </button>
        <button type="button" className="button-small" onClick={() => onZoom(1 / Math.SQRT2)}>
          − farther
        </button>
        <button type="button" className="button-small" aria-pressed={isWhole} onClick={onWhole}>
          whole
        </button>
        {onBone && (
          <button type="button" className="button-small" onClick={onBone}>
            bone
          </button>
        )}
        <button type="button" className="button-small" aria-pressed={looking.look.swapped ?? false} onClick={onSwap}>
          inverted
        </button>
        <button type="button" className="button-small" onClick={props.onQuarter}>
          turn
        </button>
        <button type="button" className="button-small" onClick={props.onFlip}>
          flip
        </button>
        <button type="button" className="button-small" aria-pressed={hasLoupe} onClick={props.onLoupe}>
          loupe
        </button>
      </span>
      <details className="plate-levels">
        <summary>
          levels: {looking.name ?? BY_HAND}
          {linked.isLinked && ', linked'}
        </summary>
        <div className="plate-levels-body">
          <label htmlFor={`${id}-look`}>Look</label>
          <select
            id={`${id}-look`}
            value={looking.name ?? BY_HAND}
            onChange={(event) => {
              const named = looks.find(({ name }) => name === event.target.value);
              if (named) onChoose(named);
            }}
          >
            {looks.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
            {looking.name === null && <option value={BY_HAND}>{BY_HAND}</option>}
          </select>
          <label htmlFor={`${id}-level`}>Level</label>
          <input
            id={`${id}-level`}
            type="range"
            min={range[0]}
            max={range[1]}
            step={span / 512}
            value={window.centre}
            onChange={(event) => onWindow({ ...window, centre: Number(event.target.value) })}
          />
          <label htmlFor={`${id}-width`}>Width</label>
          <input
            id={`${id}-width`}
            type="range"
            min={1}
            max={span}
            step={span / 512}
            value={window.width}
            onChange={(event) => onWindow({ ...window, width: Number(event.target.value) })}
          />
          <Choice
            label="Levels of the two films"
            isLabelHidden
            options={LINKS}
            value={linked.isLinked ? 'linked' : 'apart'}
            onChange={(choice) => linked.link(choice === 'linked')}
          />
          <p className="caption">Or drag on the film with the right button: across for width, up and down for level.</p>
        </div>
      </details>
    </div>
  );
}
