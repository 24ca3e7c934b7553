/** A round window under the pointer that shows single pixels of the film. */
import type { Look, Pixel } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { FilmCanvas } from './film-canvas.tsx';
import { usePicture } from './use-picture.ts';
import { filmPlace, type Viewport } from './viewport.ts';
import { visiblePart } from './visible.ts';

interface LoupeProps {
  readonly film: OpenFilm;
  readonly look: Look;
  readonly view: Viewport;
  readonly plate: Size;
  /** On the plate, in screen pixels. */
  readonly at: Pixel;
}

const ACROSS_PX = 190;
const GLASS: Size = { width: ACROSS_PX, height: ACROSS_PX };
const TIMES = 4;
const LEAST_SCALE = 8;

export function Loupe({ film, look, view, plate, at }: LoupeProps) {
  const near = {
    centre: filmPlace(view, plate, at),
    scale: Math.max(LEAST_SCALE, view.scale * TIMES),
    turn: view.turn,
  };
  const picture = usePicture(film, look, visiblePart(near, GLASS, film.facts, devicePixelRatio));
  return (
    <div className="loupe" aria-hidden="true" style={{ left: at[0] - ACROSS_PX / 2, top: at[1] - ACROSS_PX / 2 }}>
      <FilmCanvas picture={picture} view={near} plate={GLASS} />
      <svg aria-hidden="true" viewBox="-20 -20 40 40" width="40" height="40">
        <path d="M-20 0H-5M5 0H20M0 -20V-5M0 5V20" stroke="var(--surround)" strokeWidth="3.4" strokeOpacity="0.75" />
        <path d="M-20 0H-5M5 0H20M0 -20V-5M0 5V20" stroke="var(--chalk)" strokeWidth="1.4" />
      </svg>
    </div>
  );
}
