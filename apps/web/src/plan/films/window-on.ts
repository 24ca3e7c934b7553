/** The part of a film that fills a plate and shows all of the points, with room around them and for words beside them. */
import type { Pixel } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';

export interface FilmWindow {
  readonly viewBox: string;
  readonly filmPxPerScreenPx: number;
}

/** A pin's name beside its end, in pixels of the screen. */
const WORD_PX = 38;

/** `steadyPx`: the sides lie on multiples of it, at least half of it outside the points. */
export function windowOn(points: readonly Pixel[], plate: Size, steadyPx: number): FilmWindow {
  const x = points.map(([px]) => px);
  const y = points.map(([, py]) => py);
  const before = (px: number) => Math.floor(px / steadyPx - 1 / 2) * steadyPx;
  const after = (px: number) => Math.ceil(px / steadyPx + 1 / 2) * steadyPx;
  const [left, top] = [before(Math.min(...x)), before(Math.min(...y))];
  const [right, bottom] = [after(Math.max(...x)), after(Math.max(...y))];
  const screen = { width: Math.max(1, plate.width), height: Math.max(1, plate.height) };
  const free = Math.max(1, screen.width - 2 * WORD_PX);
  const filmPxPerScreenPx = Math.max((right - left) / free, (bottom - top) / screen.height);
  const width = screen.width * filmPxPerScreenPx;
  const height = screen.height * filmPxPerScreenPx;
  const corner = [(left + right - width) / 2, (top + bottom - height) / 2];
  return { viewBox: [...corner, width, height].join(' '), filmPxPerScreenPx };
}
