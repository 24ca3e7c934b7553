/** How to look at a film: its own looks, window by two sliders, zoom, white and black swapped. */
import type { NamedLook, Window } from '@bonewright/film';
import { useId } from 'react';
import type { Looking } from './looking.ts';

interface PlateToolsProps {
  readonly looks: readonly NamedLook[];
  readonly looking: Looking;
  readonly window: Window;
  readonly range: readonly [number, number];
  readonly isWhole: boolean;
  readonly onChoose: (look: NamedLook) => void;
  readonly onWindow: (window: Window) => void;
  readonly onSwap: () => void;
  readonly onZoom: (factor: number) => void;
  readonly onWhole: () => void;
  /** Null until the bone is traced. */
  readonly onBone: (() => void) | null;
}

const BY_HAND = 'by hand';

export function PlateTools(props: PlateToolsProps) {
  const { looks, looking, window, range, isWhole, onChoose, onWindow, onSwap, onZoom, onWhole, onBone } = props;
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
      </span>
      <details className="plate-levels">
        <summary>levels: {looking.preset ?? BY_HAND}</summary>
        <div className="plate-levels-body">
          <label htmlFor={`${id}-look`}>Look</label>
          <select
            id={`${id}-look`}
            value={looking.preset ?? BY_HAND}
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
            {looking.preset === null && <option value={BY_HAND}>{BY_HAND}</option>}
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
          <p className="caption">Or drag on the film with the right button: across for width, up and down for level.</p>
        </div>
      </details>
    </div>
  );
}
