/** Which part of a film a plate shows. Film pixels and screen pixels both run right and down; pixel centres are whole. */
import type { Pixel } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';

export interface Viewport {
  /** The film place in the middle of the plate. */
  readonly centre: Pixel;
  /** Screen pixels for one film pixel. */
  readonly scale: number;
}

const MOST_SCALE = 40;
/** How much smaller than whole a film may be shown. */
const LEAST_SHARE = 0.5;

export function wholeFilm({ cols, rows }: { readonly cols: number; readonly rows: number }, plate: Size): Viewport {
  return { centre: [(cols - 1) / 2, (rows - 1) / 2], scale: Math.min(plate.width / cols, plate.height / rows) };
}

export function filmPlace(view: Viewport, plate: Size, [x, y]: Pixel): Pixel {
  return [view.centre[0] + (x - plate.width / 2) / view.scale, view.centre[1] + (y - plate.height / 2) / view.scale];
}

export function screenPlace(view: Viewport, plate: Size, [col, row]: Pixel): Pixel {
  return [
    plate.width / 2 + (col - view.centre[0]) * view.scale,
    plate.height / 2 + (row - view.centre[1]) * view.scale,
  ];
}

/** Nearer by that factor, the film place under `at` (screen) staying where it is. */
export function zoomed(view: Viewport, whole: Viewport, plate: Size, at: Pixel, factor: number): Viewport {
  const scale = Math.min(MOST_SCALE, Math.max(whole.scale * LEAST_SHARE, view.scale * factor));
  const held = filmPlace(view, plate, at);
  const moved = filmPlace({ ...view, scale }, plate, at);
  return { centre: [view.centre[0] + held[0] - moved[0], view.centre[1] + held[1] - moved[1]], scale };
}

/** Moved with the hand by that many screen pixels. */
export const panned = (view: Viewport, dx: number, dy: number): Viewport => ({
  ...view,
  centre: [view.centre[0] - dx / view.scale, view.centre[1] - dy / view.scale],
});

/** The view box of a drawing in film pixels that lies exactly over the picture. */
export function viewBox(view: Viewport, plate: Size): string {
  const [left, top] = filmPlace(view, plate, [0, 0]);
  return `${left} ${top} ${plate.width / view.scale} ${plate.height / view.scale}`;
}

/** The nearest place that lies on the film. */
export const onFilm = ([col, row]: Pixel, { cols, rows }: { readonly cols: number; readonly rows: number }): Pixel => [
  within(col, cols - 1),
  within(row, rows - 1),
];

const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));
