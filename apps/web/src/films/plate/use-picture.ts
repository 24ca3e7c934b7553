/** The film's picture in a look; while the look changes, only the newest is asked for. */
import type { Look } from '@bonewright/film';
import { useEffect, useRef, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';

export function usePicture(film: OpenFilm, look: Look): ImageBitmap | null {
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  const wanted = useRef<Look | null>(null);
  const isBusy = useRef(false);
  useEffect(() => {
    wanted.current = look;
    if (isBusy.current) return;
    isBusy.current = true;
    void paintLatest();
    async function paintLatest() {
      for (let next = wanted.current; next !== null; next = wanted.current) {
        wanted.current = null;
        const bitmap = await film.picture(next);
        setPicture((old) => {
          old?.close();
          return bitmap;
        });
      }
      isBusy.current = false;
    }
  }, [film, look]);
  return picture;
}
