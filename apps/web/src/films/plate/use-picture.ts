/** The visible part of a film in a look; while one is painted only the newest wish waits. */
import type { Look, Region } from '@bonewright/film';
import { useEffect, useRef, useState } from 'react';
import type { PartWish } from '../engine/film-facts.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import { onFilmItself, type Part } from './visible.ts';

export interface Picture {
  readonly bitmap: ImageBitmap;
  /** What of the film it shows, in film pixels. */
  readonly shows: Region;
}

/** Null until the first is painted, or where no part is wanted. */
export function usePicture(film: OpenFilm, look: Look, part: Part | null): Picture | null {
  const [picture, setPicture] = useState<Picture | null>(null);
  const wish = useRef<PartWish | null>(null);
  const isBusy = useRef(false);
  // A part is a new object with every move: the text changes only where another one is wanted.
  const wanted = part && JSON.stringify(part);
  useEffect(() => {
    if (wanted === null) return;
    const next: Part = JSON.parse(wanted);
    const ask = async () => {
      wish.current = { ...next, look };
      if (isBusy.current) return;
      isBusy.current = true;
      for (let now: PartWish | null = wish.current; now !== null; now = wish.current) {
        wish.current = null;
        const bitmap = await film.part(now);
        const shows = onFilmItself(now);
        setPicture((old) => {
          old?.bitmap.close();
          return { bitmap, shows };
        });
      }
      isBusy.current = false;
    };
    void ask();
  }, [film, look, wanted]);
  return wanted === null ? null : picture;
}
