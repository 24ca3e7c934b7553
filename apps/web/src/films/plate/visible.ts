/** Which pixels a plate needs to be drawn: of the smallest size that is still as fine as the screen, and little beyond its edge. */
import type { Region } from '@bonewright/film';
import type { Size } from '../../drawing/use-size.ts';
import { type FilmSize, filmPlace, type Viewport } from './viewport.ts';

export interface Part {
  /** 0 for every pixel of the film, 1 for half as many each way, and so on. */
  readonly level: number;
  /** In pixels of that level. */
  readonly region: Region;
}

/** Room on every side, in shares of the plate, so that moving the film shows picture and not an edge. */
const ROOM = 0.15;
/** Regions begin and end at multiples of this: a small move asks for nothing new. */
const STEP = 64;
const LAST_LEVEL = 6;

export function visiblePart(view: Viewport, plate: Size, film: FilmSize, density: number): Part {
  const level = Math.min(LAST_LEVEL, Math.max(0, Math.floor(Math.log2(1 / (view.scale * density)))));
  const size = 2 ** level;
  const corners = [
    [-ROOM, -ROOM],
    [1 + ROOM, 1 + ROOM],
  ].map(([x = 0, y = 0]) => filmPlace(view, plate, [x * plate.width, y * plate.height]));
  const span = (axis: 0 | 1, count: number): readonly [number, number] => {
    const ends = corners.map((corner) => corner[axis] / size);
    const last = Math.ceil(count / size);
    const from = Math.floor(Math.min(...ends) / STEP) * STEP;
    const to = Math.ceil(Math.max(...ends) / STEP) * STEP;
    return [Math.min(Math.max(0, from), last - 1), Math.max(1, Math.min(last, to))];
  };
  const [left, right] = span(0, film.cols);
  const [top, bottom] = span(1, film.rows);
  return { level, region: { left, top, right: Math.max(right, left + 1), bottom: Math.max(bottom, top + 1) } };
}

/** A part as a region in pixels of the film itself. */
export function onFilmItself({ level, region }: Part): Region {
  const { left, top, right, bottom } = region;
  const size = 2 ** level;
  return { left: left * size, top: top * size, right: right * size, bottom: bottom * size };
}
