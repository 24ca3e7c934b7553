/** The film's picture in a look: a sketch at once while the look changes, every pixel as soon as it rests. */
import type { Look } from '@bonewright/film';
import { useEffect, useRef, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';

/** What is asked for next; only the newest counts. */
interface Wish {
  readonly look: Look;
  readonly isWhole: boolean;
}

const REST_MS = 120;

export function usePicture(film: OpenFilm, look: Look): ImageBitmap | null {
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  const wish = useRef<Wish | null>(null);
  const isBusy = useRef(false);
  useEffect(() => {
    const ask = async (next: Wish) => {
      wish.current = next;
      if (isBusy.current) return;
      isBusy.current = true;
      for (let now: Wish | null = next; now !== null; now = wish.current) {
        wish.current = null;
        const bitmap = await (now.isWhole ? film.picture(now.look) : film.sketch(now.look));
        setPicture((old) => {
          old?.close();
          return bitmap;
        });
      }
      isBusy.current = false;
    };
    void ask({ look, isWhole: false });
    const rest = setTimeout(() => void ask({ look, isWhole: true }), REST_MS);
    return () => clearTimeout(rest);
  }, [film, look]);
  return picture;
}
