/** Which part of the film is seen: as the user moved it, else the bone once it is traced, else the whole film. */
import type { Pixel } from '@bonewright/film';
import { useMemo, useState } from 'react';
import type { Size } from '../../drawing/use-size.ts';
import type { FourClicks } from '../marks/working.ts';
import { boneRegion, ROOM_TO_SEE, viewOf } from './bone-region.ts';
import { panned, type Viewport, wholeFilm, zoomed } from './viewport.ts';

interface FilmSize {
  readonly cols: number;
  readonly rows: number;
}

export interface View {
  readonly view: Viewport;
  readonly isWhole: boolean;
  readonly zoom: (at: Pixel, factor: number) => void;
  readonly pan: (dx: number, dy: number) => void;
  readonly seeWhole: () => void;
  /** Null until the bone is traced. */
  readonly seeBone: (() => void) | null;
}

export function useView(film: FilmSize, plate: Size, clicks: FourClicks, isTraced: boolean): View {
  const [moved, move] = useState<Viewport | null>(null);
  const whole = useMemo(() => wholeFilm(film, plate), [film, plate]);
  const bone = useMemo(() => {
    const region = boneRegion(clicks, film, ROOM_TO_SEE);
    return region && isTraced ? viewOf(region, plate) : null;
  }, [clicks, film, plate, isTraced]);
  const view = moved ?? bone ?? whole;
  return {
    view,
    isWhole: view.scale === whole.scale,
    zoom: (at, factor) => move(zoomed(view, whole, plate, at, factor)),
    pan: (dx, dy) => move(panned(view, dx, dy)),
    seeWhole: () => move(whole),
    seeBone: bone && (() => move(null)),
  };
}
