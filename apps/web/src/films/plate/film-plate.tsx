/** One film to look at and mark: picture below, drawing above, both through one viewport; mouse, touch and keys alike. */
import type { Pixel, Trace } from '@bonewright/film';
import { type KeyboardEvent, type PointerEvent, type ReactNode, useState } from 'react';
import { useSize } from '../../drawing/use-size.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { TARGET_WORDS, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import type { FourClicks } from '../marks/working.ts';
import type { Aim } from './aim.ts';
import { Crosshair } from './crosshair.tsx';
import { FilmCanvas } from './film-canvas.tsx';
import { chosen, dragged, swapped, withWindow } from './looking.ts';
import { Loupe } from './loupe.tsx';
import { PlateCaption } from './plate-caption.tsx';
import { PlateDrawing } from './plate-drawing.tsx';
import { type PlateAct, plateKey } from './plate-keys.ts';
import { PlateTools } from './plate-tools.tsx';
import { useCursor } from './use-cursor.ts';
import type { LinkedLevels } from './use-levels.ts';
import { useLooking } from './use-looking.ts';
import { usePicture } from './use-picture.ts';
import { placeIn, usePlateHand } from './use-plate-hand.ts';
import { useView } from './use-view.ts';
import { filmPlace, onFilm } from './viewport.ts';
import { visiblePart } from './visible.ts';

interface FilmPlateProps {
  readonly film: OpenFilm;
  readonly name: string;
  /** Null where the film is not marked for a trace: a later film, to be compared. */
  readonly marks: Marks | null;
  /** What shows where the bone lies. */
  readonly clicks: FourClicks;
  readonly trace: Trace | null;
  readonly aim: Aim | null;
  /** What is being worked out on the film, in words; null where nothing is. */
  readonly busy: string | null;
  readonly linked: LinkedLevels;
  readonly onTarget: (target: Target) => void;
  /** Escape: back to whatever asked for a mark. */
  readonly onLeave: () => void;
  /** To the next station along the bone, or the one before; null while none is looked at. */
  readonly onStation: ((by: number) => void) | null;
  /** Drawn over film and trace; in film pixels, of which `unit` make one of the screen. */
  readonly over: (unit: number, onSay: (words: string) => void) => ReactNode;
}

type Acts = { readonly [K in PlateAct['kind']]: (act: Extract<PlateAct, { kind: K }>) => void };
/** What keys hold down: the film without its marks, the loupe. */
const NOTHING_HELD = { isBare: false, isNear: false };
const STATIONS: Readonly<Record<string, number>> = { PageUp: -1, PageDown: 1 };
const HELD = new Map([
  [' ', { ...NOTHING_HELD, isBare: true }],
  ['l', { ...NOTHING_HELD, isNear: true }],
]);

export function FilmPlate(props: FilmPlateProps) {
  const { film, name, marks, clicks, trace, aim, busy, linked, onTarget, onLeave, onStation, over } = props;
  const { facts } = film;
  const { levels, setLevels } = linked;
  const [plate, size] = useSize<HTMLDivElement>();
  const { looks, best, looking } = useLooking(film, clicks, levels);
  const { view, isWhole, zoom, pan, seeWhole, seeBone, quarter, flip } = useView(facts, size, clicks, trace !== null);
  const cursor = useCursor(size);
  const [held, hold] = useState(NOTHING_HELD);
  const [hasLoupe, setLoupe] = useState(false);
  const [pointer, setPointer] = useState<Pixel | null>(null);
  const [said, say] = useState('');
  const part = size.width > 0 ? visiblePart(view, size, facts, devicePixelRatio) : null;
  const picture = usePicture(film, looking.look, part);

  const place = (at: Pixel) => {
    if (aim) say(aim.place(onFilm(filmPlace(view, size, at), facts)));
  };
  const hand = usePlateHand(plate, {
    onClick: place,
    // A finger that moves the loupe leaves the film where it is.
    onPan: hasLoupe ? () => undefined : pan,
    onWindow: (dx, dy) => setLevels(dragged(levels, dx, dy)),
    onZoom: zoom,
  });
  const acts: Acts = {
    step: ({ dx, dy }) => cursor.step(dx, dy),
    place: () => place(cursor.at),
    zoom: ({ factor }) => zoom(cursor.at, factor),
    whole: seeWhole,
    swap: () => setLevels(swapped(levels)),
    turn: quarter,
    flip,
    'put-away': () => {
      cursor.putAway();
      onLeave();
    },
    target: ({ target: next }) => {
      onTarget(next);
      say(`Next: ${TARGET_WORDS[next]}`);
    },
  };
  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const station = STATIONS[event.key];
    if (station !== undefined && onStation) {
      event.preventDefault();
      return onStation(station);
    }
    if (event.target !== event.currentTarget) return;
    const holding = HELD.get(event.key.toLowerCase());
    const act = plateKey(event);
    if (!act && !holding) return;
    event.preventDefault();
    if (holding && !event.repeat) hold(holding);
    if (act) perform(acts, act);
  };
  const loupeAt = hasLoupe || held.isNear ? (pointer ?? cursor.at) : null;

  return (
    <div className="plate">
      <div
        ref={plate}
        className="plate-window"
        data-aiming={aim !== null}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the plate is worked with the arrow keys
        tabIndex={0}
        aria-label={`${name}. Arrow keys move the crosshair, Enter places ${aim?.words ?? 'a mark'}, ${marks ? '1 to 4 choose a click' : '1 to 3 choose a point'}, plus and minus zoom, R turns, H flips, L held magnifies, Escape goes back to the steps${onStation ? ', Page Up and Page Down choose the station, Tab its walls' : ''}`}
        onKeyDown={keys}
        onKeyUp={(event) => HELD.has(event.key.toLowerCase()) && hold(NOTHING_HELD)}
        onBlur={() => hold(NOTHING_HELD)}
        {...hand}
        onPointerMove={(event: PointerEvent<HTMLElement>) => {
          hand.onPointerMove(event);
          setPointer(placeIn(event.currentTarget, event));
        }}
      >
        <FilmCanvas picture={picture} view={view} plate={size} />
        <PlateDrawing
          name={name}
          view={view}
          plate={size}
          marks={marks}
          trace={trace}
          isBare={held.isBare}
          over={over}
          onSay={say}
          onTap={(event) => plate.current && place(placeIn(plate.current, event))}
        />
        {cursor.shown && <Crosshair at={cursor.shown} />}
        {loupeAt && <Loupe film={film} look={looking.look} view={view} plate={size} at={loupeAt} />}
        {picture === null && <p className="plate-wait">Drawing the film</p>}
        {(busy || aim) && <p className="plate-aim">{busy ?? `click: ${aim?.words}`}</p>}
      </div>
      <PlateCaption mmPerPixel={trace?.mmPerPixel.value ?? null} scale={view.scale} turn={view.turn} />
      <PlateTools
        looks={looks}
        looking={looking}
        range={facts.levels}
        linked={linked}
        isWhole={isWhole}
        hasLoupe={hasLoupe}
        onBone={seeBone}
        onChoose={(named) => setLevels(chosen(levels, named))}
        onWindow={(window) => setLevels(withWindow(levels, { looks, best }, window))}
        onSwap={() => setLevels(swapped(levels))}
        onZoom={(factor) => zoom([size.width / 2, size.height / 2], factor)}
        onWhole={seeWhole}
        onQuarter={quarter}
        onFlip={flip}
        onLoupe={() => setLoupe(!hasLoupe)}
      />
      <p className="sr-only" role="status">
        {said}
      </p>
    </div>
  );
}

function perform<K extends PlateAct['kind']>(acts: Acts, act: Extract<PlateAct, { kind: K }>): void {
  const kind: K = act.kind;
  acts[kind](act);
}
