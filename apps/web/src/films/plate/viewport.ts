/** Which part of a film a plate shows. Film pixels and screen pixels both run right and down; pixel centres are whole. */
import type { Pixel } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';
import { matrixOf, type Turn, toFilm, toScreen } from './turn.ts';

export interface Viewport {
  /** The film place in the middle of the plate. */
  readonly centre: Pixel;
  /** Screen pixels for one film pixel. */
  readonly scale: number;
  readonly turn: Turn;
}

export interface FilmSize {
  readonly cols: number;
  readonly rows: number;
}

const MOST_SCALE = 40;
/** How much smaller than whole a film may be shown. */
const LEAST_SHARE = 0.5;

export function wholeFilm({ cols, rows }: FilmSize, plate: Size, turn: Turn): Viewport {
  return { centre: [(cols - 1) / 2, (rows - 1) / 2], scale: fitting([cols, rows], plate, turn), turn };
}

/** Screen pixels for one film pixel where a part that large just fits. */
export function fitting(part: Pixel, plate: Size, turn: Turn): number {
  const [width, height] = toScreen(turn, part).map(Math.abs);
  return Math.min(plate.width / (width || 1), plate.height / (height || 1));
}

export function filmPlace({ centre, scale, turn }: Viewport, plate: Size, [x, y]: Pixel): Pixel {
  const [col, row] = toFilm(turn, [(x - plate.width / 2) / scale, (y - plate.height / 2) / scale]);
  return [centre[0] + col, centre[1] + row];
}

export function screenPlace({ centre, scale, turn }: Viewport, plate: Size, [col, row]: Pixel): Pixel {
  const [x, y] = toScreen(turn, [(col - centre[0]) * scale, (row - centre[1]) * scale]);
  return [plate.width / 2 + x, plate.height / 2 + y];
}

/** Nearer by that factor, the film place under `at` (screen) staying where it is. */
export function zoomed(view: Viewport, whole: Viewport, plate: Size, at: Pixel, factor: number): Viewport {
  const scale = Math.min(MOST_SCALE, Math.max(whole.scale * LEAST_SHARE, view.scale * factor));
  const held = filmPlace(view, plate, at);
  const moved = filmPlace({ ...view, scale }, plate, at);
  return { ...view, centre: [view.centre[0] + held[0] - moved[0], view.centre[1] + held[1] - moved[1]], scale };
}

/** Moved with the hand by that many screen pixels. */
export function panned(view: Viewport, dx: number, dy: number): Viewport {
  const [col, row] = toFilm(view.turn, [dx / view.scale, dy / view.scale]);
  return { ...view, centre: [view.centre[0] - col, view.centre[1] - row] };
}

/** From film pixels to screen pixels, as a canvas and SVG take it. */
export function matrixIn(view: Viewport, plate: Size): readonly [number, number, number, number, number, number] {
  const [a, b, c, d] = matrixOf(view.turn);
  const [x, y] = screenPlace(view, plate, [0, 0]);
  return [a * view.scale, b * view.scale, c * view.scale, d * view.scale, x, y];
}

/** The nearest place that lies on the film. */
export const onFilm = ([col, row]: Pixel, { cols, rows }: FilmSize): Pixel => [
  within(col, cols - 1),
  within(row, rows - 1),
];

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));
