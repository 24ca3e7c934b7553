/** Which part of the film is seen: as the user moved it, else the bone once it is traced, else the whole film. */
import type { Pixel } from '@bonewright/film';
import { useMemo, useState } from 'react';
import type { Size } from '../../drawing/use-size.ts';
import type { FourClicks } from '../marks/working.ts';
import { boneRegion, ROOM_TO_SEE, viewOf } from './bone-region.ts';
import { flipped, quarterOn, STRAIGHT, type Turn } from './turn.ts';
import { type FilmSize, panned, type Viewport, wholeFilm, zoomed } from './viewport.ts';

export interface View {
  readonly view: Viewport;
  readonly isWhole: boolean;
  readonly zoom: (at: Pixel, factor: number) => void;
  readonly pan: (dx: number, dy: number) => void;
  readonly seeWhole: () => void;
  /** Null until the bone is traced. */
  readonly seeBone: (() => void) | null;
  readonly quarter: () => void;
  readonly flip: () => void;
}

export function useView(film: FilmSize, plate: Size, clicks: FourClicks, isTraced: boolean): View {
  const [moved, move] = useState<Viewport | null>(null);
  const [turn, setTurn] = useState(STRAIGHT);
  const whole = useMemo(() => wholeFilm(film, plate, turn), [film, plate, turn]);
  const bone = useMemo(() => {
    const region = boneRegion(clicks, film, ROOM_TO_SEE);
    return region && isTraced ? viewOf(region, plate, turn) : null;
  }, [clicks, film, plate, isTraced, turn]);
  const view = useMemo(() => (moved ? { ...moved, turn } : (bone ?? whole)), [moved, bone, whole, turn]);
  // What was fitted is fitted again; what was moved by hand keeps its middle and its size.
  const turnTo = (next: Turn) => {
    if (view.scale === whole.scale) move(null);
    setTurn(next);
  };
  return {
    view,
    isWhole: view.scale === whole.scale,
    zoom: (at, factor) => move(zoomed(view, whole, plate, at, factor)),
    pan: (dx, dy) => move(panned(view, dx, dy)),
    seeWhole: () => move(whole),
    seeBone: bone && (() => move(null)),
    quarter: () => turnTo(quarterOn(turn)),
    flip: () => turnTo(flipped(turn)),
  };
}
