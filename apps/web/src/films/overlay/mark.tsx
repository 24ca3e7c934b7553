/** One mark on a film: a crosshair with its number, to be dragged or nudged with the arrow keys. */
import type { Pixel } from '@bonewright/film';
import { type KeyboardEvent, type PointerEvent, useContext, useRef } from 'react';
import { toFilm, uprightAt } from '../plate/turn.ts';
import { PlateTurn } from './plate-turn.ts';

interface MarkProps {
  readonly at: Pixel;
  readonly word: string;
  readonly label: string;
  readonly unit: number;
  readonly colour: string;
  /** From the mark to its balloon, upright, in film pixels; null where the mark has no number. */
  readonly balloon: Pixel | null;
  /** How far from its middle it can be gripped, in screen pixels; less where another stands near. */
  readonly reachPx?: number;
  readonly onHold: (place: Pixel) => void;
  readonly onKeep: (place: Pixel) => void;
  readonly onRemove: () => void;
  /** Pressed and let go without moving it. */
  readonly onTap: (event: PointerEvent) => void;
}

const CROSS_PX = 7;
export const REACH_PX = 16;
/** Below this a press that slipped is still a tap. */
const SLIP_PX = 4;
const BALLOON_PX = 10;
const NUDGE_PX = 0.25;
const ARROWS: Readonly<Record<string, Pixel>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Grip {
  readonly x: number;
  readonly y: number;
  readonly start: Pixel;
  place: Pixel;
  isDrag: boolean;
}

export function Mark(props: MarkProps) {
  const { at, word, label, unit, colour, balloon, reachPx = REACH_PX, onHold, onKeep, onRemove, onTap } = props;
  const grip = useRef<Grip | null>(null);
  const turn = useContext(PlateTurn);
  const [x, y] = at;
  const keys = (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (arrow) {
      const size = event.shiftKey ? NUDGE_PX : 1;
      const [col, row] = toFilm(turn, arrow);
      onKeep([x + col * size, y + row * size]);
    } else if (event.key === 'Delete' || event.key === 'Backspace') onRemove();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const down = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { x: event.clientX, y: event.clientY, start: at, place: at, isDrag: false };
  };
  const move = (event: PointerEvent<SVGGElement>) => {
    const { current } = grip;
    if (!current) return;
    event.stopPropagation();
    const [dx, dy] = [event.clientX - current.x, event.clientY - current.y];
    current.isDrag ||= Math.hypot(dx, dy) >= SLIP_PX;
    if (!current.isDrag) return;
    const [col, row] = toFilm(turn, [dx * unit, dy * unit]);
    current.place = [current.start[0] + col, current.start[1] + row];
    onHold(current.place);
  };
  const up = (event: PointerEvent<SVGGElement>) => {
    const { current } = grip;
    if (!current) return;
    event.stopPropagation();
    grip.current = null;
    if (current.isDrag) onKeep(current.place);
    else onTap(event);
  };
  const arm = Math.min(CROSS_PX, reachPx) * unit;
  const cross = `M${x - arm} ${y}h${2 * arm}M${x} ${y - arm}v${2 * arm}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot lie inside a drawing
    <g
      role="button"
      tabIndex={0}
      aria-label={label}
      className="film-mark"
      onKeyDown={keys}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
    >
      <circle cx={x} cy={y} r={reachPx * unit} fill="transparent" className="film-mark-ring" strokeWidth={2 * unit} />
      <path d={cross} stroke="var(--surround)" strokeOpacity="0.75" strokeWidth={3.4 * unit} fill="none" />
      <path d={cross} stroke={colour} strokeWidth={1.4 * unit} fill="none" />
      {balloon && (
        <g transform={uprightAt(turn, at)}>
          <circle
            cx={x + balloon[0]}
            cy={y + balloon[1]}
            r={BALLOON_PX * unit}
            fill="var(--surround)"
            stroke={colour}
            strokeWidth={1.25 * unit}
          />
          <text
            x={x + balloon[0]}
            y={y + balloon[1] + 4.6 * unit}
            fontSize={13 * unit}
            textAnchor="middle"
            fill="var(--chalk)"
            className="film-mark-word"
          >
            {word}
          </text>
        </g>
      )}
    </g>
  );
}
