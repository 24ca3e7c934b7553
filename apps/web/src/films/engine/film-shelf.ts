/** Films open on this page, by the hash of their file; the least used is closed when there are too many. */
import { fileBytes } from '../../sync/files.ts';
import { OpenFilm } from './open-film.ts';

/** A series of four visits, both views. */
const MOST_OPEN = 8;
const shelf = new Map<string, Promise<OpenFilm>>();

/** Opens a film once. Rejects with InputError where its file is no film, with what `fileBytes` says where it is not here. */
export function openFilm(sha256: string, name: string): Promise<OpenFilm> {
  const opening = shelf.get(sha256) ?? fileBytes(sha256).then((bytes) => OpenFilm.open(bytes, name));
  putOnShelf(sha256, opening);
  opening.catch(() => shelf.delete(sha256));
  return opening;
}

/** A film that has just been decoded need not be decoded again. */
export function putOnShelf(sha256: string, opening: Promise<OpenFilm>): void {
  shelf.delete(sha256);
  shelf.set(sha256, opening);
  for (const [oldest, film] of shelf) {
    if (shelf.size <= MOST_OPEN) break;
    shelf.delete(oldest);
    void film.then((open) => open.close());
  }
}
