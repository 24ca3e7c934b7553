/** One film cut at its fracture: the distal part is dragged, or turned by its end; the arrow keys do the same. */
import type { Pixel } from '@bonewright/film';
import { type KeyboardEvent, type PointerEvent, useId, useMemo, useRef, useState } from 'react';
import { useSize } from '../../drawing/use-size.ts';
import { filmMap } from '../../plan/films/film-map.ts';
import { draggedDeg, draggedMm, type Lever, moved } from '../../plan/films/fragment-move.ts';
import { FilmBelow, type FilmPicture } from '../../plan/films/reduced-picture.tsx';
import { windowOn } from '../../plan/films/window-on.ts';
import { Crosshair } from '../plate/crosshair.tsx';
import { useCursor } from '../plate/use-cursor.ts';
import { type Move, movedOn, NOT_MOVED } from './moves.ts';
import { type Reducing, VIEWS, type ViewIndex } from './use-reducing.ts';

interface ReductionPlateProps {
  readonly view: ViewIndex;
  readonly reducing: Reducing;
  readonly picture: FilmPicture | null;
  /** The broken ends are being marked: the film is shown as it is. */
  readonly isMarking: boolean;
  readonly onMarked: () => void;
}

interface Grip {
  readonly from: Pixel;
  readonly move: Move;
  readonly isTurn: boolean;
  readonly stroke: string;
}

const STEP_MM = 0.1;
const FAR = 5;
const TURN_DEG = 0.5;
const CURSOR_PX = 8;
const GRIP_PX = 22;
const STEADY_MM = 4;
const ARROWS: Readonly<Record<string, Pixel>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const TURNS: Readonly<Record<string, number>> = { ',': -1, '<': -FAR, '.': 1, '>': FAR };

export function ReductionPlate({ view, reducing, picture, isMarking, onMarked }: ReductionPlateProps) {
  const [plate, size] = useSize<HTMLDivElement>();
  const help = useId();
  const grip = useRef<Grip | null>(null);
  const strokes = useRef(0);
  const [first, setFirst] = useState<Pixel | null>(null);
  const cursor = useCursor(size);
  const film = reducing.films[view];
  const { move, moveTo } = reducing;
  const shown = isMarking ? NOT_MOVED : move;
  const lengthMm = reducing.before.lengthMm.value ?? 1;
  const map = useMemo(() => filmMap(film, lengthMm, shown), [film, lengthMm, shown]);
  if (!map) return null;
  const { lever, distalEnd } = map;
  const start = map.pixel(0, 0);
  const lengthPx = lengthMm / map.mmPerPixel;
  const inLine: Pixel = [start[0] + lever.along[0] * lengthPx, start[1] + lever.along[1] * lengthPx];
  const { viewBox, filmPxPerScreenPx: unit } = windowOn([start, distalEnd, inLine], size, STEADY_MM / map.mmPerPixel);
  const [left = 0, top = 0] = viewBox.split(' ').map(Number);
  const filmAt = ([x, y]: Pixel): Pixel => [left + x * unit, top + y * unit];
  const pivotNow = moved(lever, shown, view).place(lever.pivot);
  const handle = moved(lever, shown, view).place(distalEnd);

  const mark = (at: Pixel) => {
    if (!first) return setFirst(at);
    setFirst(null);
    reducing.markEnds(view, [first, at]);
    onMarked();
  };
  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return;
    const from = filmAt(placeIn(event));
    if (isMarking) return mark(from);
    event.currentTarget.setPointerCapture(event.pointerId);
    strokes.current += 1;
    const isTurn = Math.hypot(from[0] - handle[0], from[1] - handle[1]) < GRIP_PX * unit;
    grip.current = { from, move, isTurn, stroke: `drag ${view} ${strokes.current}` };
  };
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    const { current } = grip;
    if (!current) return;
    const at = filmAt(placeIn(event));
    moveTo(draggedTo(current, at, lever, view), current.stroke);
  };
  const up = () => {
    grip.current = null;
    reducing.rest();
  };
  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    const turn = TURNS[event.key];
    if (isMarking && event.key === 'Enter') mark(filmAt(cursor.at));
    else if (isMarking && arrow) {
      const px = event.shiftKey ? 1 : CURSOR_PX;
      cursor.step(arrow[0] * px, arrow[1] * px);
    } else if (arrow) {
      const px = ((event.shiftKey ? FAR : 1) * STEP_MM) / map.mmPerPixel;
      const [acrossMm, alongMm] = draggedMm(lever, [arrow[0] * px, arrow[1] * px]);
      moveTo(movedOn(move, view, { acrossMm, alongMm }), `keys ${view}`);
    } else if (turn !== undefined) {
      const sense = Math.sign(lever.along[0] * lever.across[1] - lever.along[1] * lever.across[0]);
      moveTo(movedOn(move, view, { deg: turn * TURN_DEG * sense }), `turn ${view}`);
    } else return;
    event.preventDefault();
  };
  return (
    <div
      ref={plate}
      className="reduction-plate"
      data-marking={isMarking}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the plate is worked with the arrow keys
      tabIndex={0}
      aria-label={`${VIEWS[view]} film, distal part`}
      aria-describedby={help}
      onKeyDown={keys}
      onBlur={reducing.rest}
      onPointerDown={down}
      onPointerMove={drag}
      onPointerUp={up}
      onPointerCancel={up}
    >
      {size.width > 0 && (
        <>
          <FilmBelow {...{ map, picture, viewBox, unit }} isBare={isMarking} width={size.width} height={size.height} />
          <svg viewBox={viewBox} width={size.width} height={size.height} className="film-drawing" aria-hidden="true">
            {isMarking ? (
              [...(first ? [first] : []), ...(reducing.ends[view] ?? [])].map((at, i) => (
                <circle key={i} cx={at[0]} cy={at[1]} r={4 * unit} fill="var(--coral)" />
              ))
            ) : (
              <Handle at={handle} pivot={pivotNow} unit={unit} />
            )}
          </svg>
          {isMarking && cursor.shown && <Crosshair at={cursor.shown} />}
        </>
      )}
      <p id={help} className="plate-aim">
        {isMarking
          ? `click: middle of the ${first ? 'distal' : 'proximal'} broken end`
          : 'drag the distal part, or its end to turn it'}
        <span className="sr-only">
          {isMarking
            ? '. Arrow keys move the crosshair, Enter places it'
            : '. Arrow keys shift it, with Shift in larger steps; comma and full stop turn it; Z undoes'}
        </span>
      </p>
    </div>
  );
}

function Handle({ at, pivot, unit }: { readonly at: Pixel; readonly pivot: Pixel; readonly unit: number }) {
  return (
    <g fill="none" stroke="var(--straw)" strokeWidth={2 * unit}>
      <path
        d={`M${pivot[0]} ${pivot[1]}L${at[0]} ${at[1]}`}
        strokeDasharray={`${6 * unit} ${5 * unit}`}
        strokeWidth={unit}
      />
      <circle cx={pivot[0]} cy={pivot[1]} r={3 * unit} fill="var(--straw)" stroke="none" />
      <circle cx={at[0]} cy={at[1]} r={10 * unit} stroke="var(--surround)" strokeWidth={5 * unit} />
      <circle cx={at[0]} cy={at[1]} r={10 * unit} />
    </g>
  );
}

function draggedTo({ from, move, isTurn }: Grip, at: Pixel, lever: Lever, view: ViewIndex): Move {
  if (isTurn) {
    const pivot = moved(lever, move, view).place(lever.pivot);
    return movedOn(move, view, { deg: draggedDeg(lever, pivot, from, at) });
  }
  const [acrossMm, alongMm] = draggedMm(lever, [at[0] - from[0], at[1] - from[1]]);
  return movedOn(move, view, { acrossMm, alongMm });
}

function placeIn(event: PointerEvent<HTMLElement>): Pixel {
  const box = event.currentTarget.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}
