/** One film to look at and mark: picture below, drawing above, both through one viewport; mouse, touch and keys alike. */
import type { Pixel, Trace } from '@bonewright/film';
import { type KeyboardEvent, useState } from 'react';
import { useSize } from '../../drawing/use-size.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { TARGET_WORDS, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import { saysPlace } from '../overlay/marked.tsx';
import { Crosshair } from './crosshair.tsx';
import { FilmCanvas } from './film-canvas.tsx';
import { chosen, dragged, swapped, windowOf, withWindow } from './looking.ts';
import { PlateCaption } from './plate-caption.tsx';
import { PlateDrawing } from './plate-drawing.tsx';
import { type PlateAct, plateKey } from './plate-keys.ts';
import { PlateTools } from './plate-tools.tsx';
import { useCursor } from './use-cursor.ts';
import { useLooking } from './use-looking.ts';
import { usePicture } from './use-picture.ts';
import { placeIn, usePlateHand } from './use-plate-hand.ts';
import { useView } from './use-view.ts';
import { filmPlace, onFilm } from './viewport.ts';

interface FilmPlateProps {
  readonly film: OpenFilm;
  readonly name: string;
  readonly marks: Marks;
  readonly trace: Trace | null;
  readonly target: Target | null;
  /** What is being worked out on the film, in words; null where nothing is. */
  readonly busy: string | null;
  readonly onTarget: (target: Target | null) => void;
}

type Acts = { readonly [K in PlateAct['kind']]: (act: Extract<PlateAct, { kind: K }>) => void };

export function FilmPlate({ film, name, marks, trace, target, busy, onTarget }: FilmPlateProps) {
  const { facts } = film;
  const { clicks } = marks.working;
  const [plate, size] = useSize<HTMLDivElement>();
  const { looks, looking, setLooking } = useLooking(film, clicks);
  const { view, isWhole, zoom, pan, seeWhole, seeBone } = useView(facts, size, clicks, trace !== null);
  const cursor = useCursor(size);
  const [isBare, setBare] = useState(false);
  const [said, say] = useState('');
  const picture = usePicture(film, looking.look);

  const place = (at: Pixel) => {
    if (!target) return;
    const inside = onFilm(filmPlace(view, size, at), facts);
    marks.keepMark(target, inside);
    say(`${saysPlace(target, inside)}, placed`);
    onTarget(null);
  };
  const hand = usePlateHand(plate, {
    onClick: place,
    onPan: pan,
    onWindow: (dx, dy) => setLooking(dragged(looking, looks, dx, dy)),
    onZoom: zoom,
  });
  const acts: Acts = {
    step: ({ dx, dy }) => cursor.step(dx, dy),
    place: () => place(cursor.at),
    zoom: ({ factor }) => zoom(cursor.at, factor),
    whole: seeWhole,
    swap: () => setLooking(swapped(looking)),
    hide: () => setBare(true),
    'put-away': cursor.putAway,
    target: ({ target: next }) => {
      onTarget(next);
      say(`Next: ${TARGET_WORDS[next]}`);
    },
  };
  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target !== event.currentTarget) return;
    const act = plateKey(event);
    if (!act) return;
    event.preventDefault();
    perform(acts, act);
  };

  return (
    <div className="plate">
      <div
        ref={plate}
        className="plate-window"
        data-aiming={target !== null}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the plate is worked with the arrow keys
        tabIndex={0}
        aria-label={`${name}. Arrow keys move the crosshair, Enter places ${target ? TARGET_WORDS[target] : 'a mark'}, 1 to 4 choose a click, plus and minus zoom`}
        onKeyDown={keys}
        onKeyUp={(event) => event.key === ' ' && setBare(false)}
        onBlur={() => setBare(false)}
        {...hand}
      >
        <FilmCanvas picture={picture} film={facts} view={view} plate={size} />
        <PlateDrawing
          name={name}
          view={view}
          plate={size}
          marks={marks}
          trace={trace}
          isBare={isBare}
          onSay={say}
          onTap={(event) => plate.current && place(placeIn(plate.current, event))}
        />
        {cursor.shown && <Crosshair at={cursor.shown} />}
        {picture === null && <p className="plate-wait">Drawing the film</p>}
        {(busy || target) && <p className="plate-aim">{busy ?? `click: ${target && TARGET_WORDS[target]}`}</p>}
      </div>
      <PlateCaption mmPerPixel={trace?.mmPerPixel.value ?? null} scale={view.scale} />
      <PlateTools
        looks={looks}
        looking={looking}
        window={windowOf(looking, looks)}
        range={facts.levels}
        isWhole={isWhole}
        onBone={seeBone}
        onChoose={(named) => setLooking(chosen(looking, named))}
        onWindow={(window) => setLooking(withWindow(looking, window))}
        onSwap={() => setLooking(swapped(looking))}
        onZoom={(factor) => zoom([size.width / 2, size.height / 2], factor)}
        onWhole={seeWhole}
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
