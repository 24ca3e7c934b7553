/** Films as pictures that an image element can show, in the look that suits their bone. */
import type { FilmState } from '@bonewright/casebook';
import type { SegmentClicks } from '@bonewright/film';
import { useEffect, useState } from 'react';
import type { FilmPicture } from '../../plan/films/reduced-picture.tsx';
import { openFilm } from '../engine/film-shelf.ts';
import { lookOnBone } from '../plate/bone-look.ts';

/** By film id; a film that is still being read, or cannot be, is absent. */
export function useFilmPictures(films: readonly FilmState[]): ReadonlyMap<string, FilmPicture> {
  const [pictures, setPictures] = useState<ReadonlyMap<string, FilmPicture>>(new Map());
  // Films are new objects with every entry: what the pictures depend on, as a text.
  const wanted = JSON.stringify(
    films.map(({ filmId, file, clicks }): Wanted => [filmId, file.value.sha256, clicks?.value.segments ?? []]),
  );
  useEffect(() => {
    let isWanted = true;
    const urls: string[] = [];
    const show = async ([filmId, sha256, segments]: Wanted) => {
      const picture = await pictureOf(sha256, segments);
      if (!picture) return;
      if (!isWanted) return URL.revokeObjectURL(picture.url);
      urls.push(picture.url);
      setPictures((now) => new Map(now).set(filmId, picture));
    };
    const list: Wanted[] = JSON.parse(wanted);
    for (const film of list) void show(film);
    return () => {
      isWanted = false;
      setPictures(new Map());
      for (const url of urls) URL.revokeObjectURL(url);
    };
  }, [wanted]);
  return pictures;
}

type Wanted = readonly [filmId: string, sha256: string, segments: readonly SegmentClicks[]];

/** Null where the film cannot be read: the Films stage says why. */
async function pictureOf(sha256: string, segments: readonly SegmentClicks[]): Promise<FilmPicture | null> {
  const film = await openFilm(sha256, sha256).catch(() => null);
  if (!film) return null;
  const [proximal, distal] = segments;
  const clicks = [proximal?.from ?? null, proximal?.to ?? null, distal?.from ?? null, distal?.to ?? null] as const;
  const look = (await lookOnBone(film, clicks)) ?? film.facts.looks[0];
  if (!look) return null;
  const url = URL.createObjectURL(await film.pictureFile(look.look));
  return { url, cols: film.facts.cols, rows: film.facts.rows };
}
