/** One film to look at and mark: picture below, drawing above, both through one viewport; mouse, touch and keys alike. */
import type { Pixel, Trace } from '@bonewright/film';
import { type KeyboardEvent, useMemo, useState } from 'react';
import { useSize } from '../../drawing/use-size.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { TARGET_WORDS, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import { Found } from '../overlay/found.tsx';
import { Marked, saysPlace } from '../overlay/marked.tsx';
import { Written } from '../overlay/written.tsx';
import { boneRegion, ROOM_TO_SEE, viewOf } from './bone-region.ts';
import { FilmCanvas } from './film-canvas.tsx';
import { chosen, type Looking, swapped, windowOf, withWindow } from './looking.ts';
import { PlateCaption } from './plate-caption.tsx';
import { plateKey } from './plate-keys.ts';
import { PlateTools } from './plate-tools.tsx';
import { useLooking } from './use-looking.ts';
import { usePicture } from './use-picture.ts';
import { placeIn, usePlateHand } from './use-plate-hand.ts';
import { filmPlace, panned, type Viewport, viewBox, wholeFilm, zoomed } from './viewport.ts';

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

export function FilmPlate({ film, name, marks, trace, target, busy, onTarget }: FilmPlateProps) {
  const { facts } = film;
  const [plate, size] = useSize<HTMLDivElement>();
  const { looks, looking, setLooking } = useLooking(film, marks.working.clicks);
  const [seen, setSeen] = useState<Viewport | null>(null);
  const [cursor, setCursor] = useState<Pixel | null>(null);
  const [isBare, setBare] = useState(false);
  const [said, say] = useState('');
  const whole = useMemo(() => wholeFilm(facts, size), [facts, size]);
  const isTraced = trace !== null;
  const bone = useMemo(() => {
    const region = boneRegion(marks.working.clicks, facts, ROOM_TO_SEE);
    return region && isTraced ? viewOf(region, size) : null;
  }, [marks.working.clicks, facts, size, isTraced]);
  const view = seen ?? bone ?? whole;
  const unit = 1 / view.scale;
  const picture = usePicture(film, looking.look);
  const middle: Pixel = [size.width / 2, size.height / 2];
  const zoom = (at: Pixel, factor: number) => setSeen(zoomed(view, whole, size, at, factor));

  const place = (at: Pixel) => {
    if (!target) return;
    const inside = clamp(filmPlace(view, size, at), facts);
    marks.keepMark(target, inside);
    say(`${saysPlace(target, inside)}, placed`);
    onTarget(null);
  };

  const hand = usePlateHand(plate, {
    onClick: place,
    onPan: (dx, dy) => setSeen(panned(view, dx, dy)),
    onWindow: (dx, dy) => setLooking(dragged(looking, looks, dx, dy)),
    onZoom: zoom,
  });

  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target !== event.currentTarget) return;
    const act = plateKey(event);
    if (!act) return;
    event.preventDefault();
    if (act.kind === 'step') {
      const from = cursor ?? middle;
      const at: Pixel = [from[0] + act.dx, from[1] + act.dy];
      setCursor([within(at[0], size.width), within(at[1], size.height)]);
    } else if (act.kind === 'place') {
      if (target) place(cursor ?? middle);
    } else if (act.kind === 'zoom') zoom(cursor ?? middle, act.factor);
    else if (act.kind === 'whole') setSeen(whole);
    else if (act.kind === 'swap') setLooking(swapped(looking));
    else if (act.kind === 'hide') setBare(true);
    else if (act.kind === 'put-away') setCursor(null);
    else {
      onTarget(act.target);
      say(`Next: ${TARGET_WORDS[act.target]}`);
    }
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
        {size.width > 0 && (
          // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
          <svg
            viewBox={viewBox(view, size)}
            className="plate-drawing"
            role="group"
            aria-label={`Marks on the ${name}`}
            visibility={isBare ? 'hidden' : 'visible'}
          >
            {trace && <Found trace={trace} unit={unit} />}
            {trace && <Written trace={trace} unit={unit} ballMm={ballMm(marks)} />}
            <Marked
              marks={marks}
              unit={unit}
              isBallFound={trace?.ball != null}
              onSay={say}
              onTap={(event) => plate.current && place(placeIn(plate.current, event))}
            />
          </svg>
        )}
        {cursor && <Crosshair at={cursor} />}
        {picture === null && <p className="plate-wait">Drawing the film</p>}
        {(busy || target) && <p className="plate-aim">{busy ?? `click: ${target && TARGET_WORDS[target]}`}</p>}
      </div>
      <PlateCaption mmPerPixel={trace?.mmPerPixel.value ?? null} scale={view.scale} />
      <PlateTools
        looks={looks}
        looking={looking}
        window={windowOf(looking, looks)}
        range={[facts.min, facts.max]}
        isWhole={view.scale === whole.scale}
        onBone={bone && (() => setSeen(null))}
        onChoose={(named) => setLooking(chosen(looking, named))}
        onWindow={(window) => setLooking(withWindow(looking, window))}
        onSwap={() => setLooking(swapped(looking))}
        onZoom={(factor) => zoom(middle, factor)}
        onWhole={() => setSeen(whole)}
      />
      <p className="sr-only" role="status">
        {said}
      </p>
    </div>
  );
}

function Crosshair({ at: [x, y] }: { readonly at: Pixel }) {
  return (
    <svg
      className="plate-crosshair"
      width="41"
      height="41"
      style={{ left: x - 20.5, top: y - 20.5 }}
      aria-hidden="true"
    >
      <path d="M20.5 0V16M20.5 25V41M0 20.5H16M25 20.5H41" stroke="#0b0a08" strokeWidth="4" opacity="0.7" />
      <path d="M20.5 0V16M20.5 25V41M0 20.5H16M25 20.5H41" stroke="#ffffff" strokeWidth="1.5" />
    </svg>
  );
}

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));

const clamp = ([col, row]: Pixel, { cols, rows }: { readonly cols: number; readonly rows: number }): Pixel => [
  within(col, cols - 1),
  within(row, rows - 1),
];

/** Across changes how much contrast, up and down how bright; a plate's width is about four windows. */
const WINDOW_PER_PX = 1 / 256;

function dragged(looking: Looking, looks: OpenFilm['facts']['looks'], dx: number, dy: number): Looking {
  const window = windowOf(looking, looks);
  return withWindow(looking, {
    centre: window.centre + window.width * dy * WINDOW_PER_PX,
    width: window.width * 2 ** (dx * 4 * WINDOW_PER_PX),
  });
}

function ballMm({ working }: Marks): number | null {
  const mm = Number(working.calibration.diameterMm);
  return working.calibration.kind === 'ball' && mm > 0 ? mm : null;
}
