/** Which two films of a case lie side by side: the newest of each view, and others where a view is missing. */
import type { FilmState } from '@bonewright/casebook';
import { filmOfView } from './trace/use-joining.ts';

/** Craniocaudal at the left once both views are known; until then in the order they came. */
export function shownFilms(films: readonly FilmState[]): FilmState[] {
  const craniocaudal = filmOfView(films, 'craniocaudal');
  const mediolateral = filmOfView(films, 'mediolateral');
  if (craniocaudal && mediolateral) return [craniocaudal, mediolateral];
  const known = craniocaudal ?? mediolateral;
  const others = films.filter((film) => film !== known);
  const open = others.filter(({ view }) => view.value === null);
  const second = open[0] ?? others.at(-1);
  if (!known) return films.slice(0, 2);
  const pair = second ? [known, second] : [known];
  return pair.toSorted((a, b) => films.indexOf(a) - films.indexOf(b));
}

/** Everything that joining the views needs of a film is there. */
export const isWhole = ({ view, trace, fractureLine }: FilmState): boolean =>
  view.value !== null && trace !== null && trace.value.mmPerPixel.value !== null && fractureLine !== null;
