import { faultLine, InputError } from '@bonewright/fault';
import { useEffect, useState } from 'react';
import { openFilm } from './film-shelf.ts';
import type { OpenFilm } from './open-film.ts';

export type FilmOpening =
  | { readonly kind: 'reading' }
  | { readonly kind: 'open'; readonly film: OpenFilm }
  | { readonly kind: 'failed'; readonly why: string };

const READING: FilmOpening = { kind: 'reading' };

/** The film with that file, opened when first asked for. */
export function useOpenFilm(sha256: string, name: string): FilmOpening {
  const [opening, setOpening] = useState<FilmOpening & { readonly of?: string }>(READING);
  useEffect(() => {
    let isWanted = true;
    openFilm(sha256, name).then(
      (film) => isWanted && setOpening({ kind: 'open', film, of: sha256 }),
      (error: unknown) => isWanted && setOpening({ kind: 'failed', why: whyOf(error, name), of: sha256 }),
    );
    return () => {
      isWanted = false;
    };
  }, [sha256, name]);
  return opening.of === sha256 ? opening : READING;
}

function whyOf(error: unknown, name: string): string {
  if (error instanceof InputError) return faultLine(error, name);
  return error instanceof Error ? error.message : String(error);
}
