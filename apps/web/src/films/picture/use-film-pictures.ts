/** Films as pictures that an image element can show, in the look they open with. */
import type { FilmState } from '@bonewright/casebook';
import { useEffect, useState } from 'react';
import type { FilmPicture } from '../../plan/films/reduced-picture.tsx';
import { openFilm } from '../engine/film-shelf.ts';

/** By film id; a film that is still being read, or cannot be, is absent. */
export function useFilmPictures(films: readonly FilmState[]): ReadonlyMap<string, FilmPicture> {
  const [pictures, setPictures] = useState<ReadonlyMap<string, FilmPicture>>(new Map());
  const wanted = films.map(({ filmId, file }) => `${filmId} ${file.value.sha256}`).join('\n');
  useEffect(() => {
    let isWanted = true;
    const urls: string[] = [];
    const show = async (filmId: string, sha256: string) => {
      const picture = await pictureOf(sha256);
      if (!picture) return;
      urls.push(picture.url);
      if (isWanted) setPictures((now) => new Map(now).set(filmId, picture));
    };
    for (const line of wanted.split('\n').filter(Boolean)) {
      const [filmId = '', sha256 = ''] = line.split(' ');
      void show(filmId, sha256);
    }
    return () => {
      isWanted = false;
      setPictures(new Map());
      for (const url of urls) URL.revokeObjectURL(url);
    };
  }, [wanted]);
  return pictures;
}

/** Null where the film cannot be read: the Films stage says why. */
async function pictureOf(sha256: string): Promise<FilmPicture | null> {
  const film = await openFilm(sha256, sha256).catch(() => null);
  const look = film?.facts.looks[0]?.look;
  if (!film || !look) return null;
  const url = URL.createObjectURL(await film.pictureFile(look));
  return { url, cols: film.facts.cols, rows: film.facts.rows };
}
