/**
 * A photograph of a film mended by the film's four corners: the projective map that takes a rectangle to the four points
 * (P. Heckbert, Fundamentals of texture mapping and image warping, 1989, section 2.2.3), sampled between pixels.
 * It squares the film's plane and nothing else: lens distortion, glare and what lies off that plane stay.
 */
import { InputError } from '@bonewright/fault';
import { checkSize } from '../decode/size-check.ts';
import type { GreyImage } from '../model/film.ts';
import type { Pixel } from '../model/trace.ts';

/** Top left, top right, bottom right, bottom left, as the film should lie. */
export type Corners = readonly [Pixel, Pixel, Pixel, Pixel];

/**
 * The film alone, square, `cols` by `rows`, its corners at the centres of the corner pixels.
 * @throws InputError where the corners do not go round the film in order, lie outside the picture, or the size is not sane.
 */
export function squareUp(
  image: GreyImage,
  corners: Corners,
  { rows, cols }: { rows: number; cols: number },
): GreyImage {
  checkCorners(image, corners);
  checkSize({ rows, cols, samples: 1, frames: 1 }, 'size');
  if (rows < 2 || cols < 2)
    throw new InputError(`a film of ${cols} x ${rows} pixels has no corners`, 'size', 'give at least 2 x 2');
  const at = projection(corners);
  const pixels = new Float32Array(rows * cols);
  for (let row = 0; row < rows; row++)
    for (let col = 0; col < cols; col++)
      pixels[row * cols + col] = sampled(image, at(col / (cols - 1), row / (rows - 1)));
  return { ...image, rows, cols, pixels };
}

/** A size that keeps about as many pixels as the photograph has: the longer of each two opposite sides. */
export function squaredSize([a, b, c, d]: Corners): { rows: number; cols: number } {
  const side = (p: Pixel, q: Pixel): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
  return {
    cols: Math.round(Math.max(side(a, b), side(d, c))) + 1,
    rows: Math.round(Math.max(side(a, d), side(b, c))) + 1,
  };
}

/** The size in pixels of a film that is so wide and high: its shape exactly, about as many pixels as the photograph has of it. */
export function sizeOfFilm(
  corners: Corners,
  { widthMm, heightMm }: { widthMm: number; heightMm: number },
): { rows: number; cols: number } {
  if (!(widthMm > 0 && heightMm > 0))
    throw new InputError(`a film of ${widthMm} x ${heightMm} mm has no shape`, 'size', 'give its width and height');
  const { rows, cols } = squaredSize(corners);
  const pixelsPerMm = Math.max((cols - 1) / widthMm, (rows - 1) / heightMm);
  return { cols: Math.round(widthMm * pixelsPerMm) + 1, rows: Math.round(heightMm * pixelsPerMm) + 1 };
}

/** Unit square (u right, v down) to the picture. */
export function projection([[x0, y0], [x1, y1], [x2, y2], [x3, y3]]: Corners): (u: number, v: number) => Pixel {
  const [sx, sy] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3];
  const [ax, ay, bx, by] = [x1 - x2, y1 - y2, x3 - x2, y3 - y2];
  const area = ax * by - bx * ay;
  const g = (sx * by - bx * sy) / area;
  const h = (ax * sy - sx * ay) / area;
  return (u, v) => {
    const w = g * u + h * v + 1;
    return [
      ((x1 - x0 + g * x1) * u + (x3 - x0 + h * x3) * v + x0) / w,
      ((y1 - y0 + g * y1) * u + (y3 - y0 + h * y3) * v + y0) / w,
    ];
  };
}

function checkCorners({ rows, cols }: GreyImage, corners: Corners): void {
  const isInside = ([x, y]: Pixel): boolean => x >= 0 && y >= 0 && x <= cols - 1 && y <= rows - 1;
  if (!corners.every(isInside))
    throw new InputError(
      'a corner of the film lies outside the picture',
      'corners',
      'mark all four corners in the picture',
    );
  const turns = corners.map((p, i) => {
    const q = corners[(i + 1) % 4]!;
    const r = corners[(i + 2) % 4]!;
    return (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]);
  });
  if (!turns.every((turn) => turn > 0))
    throw new InputError(
      'the four corners do not go round the film',
      'corners',
      'mark top left, top right, bottom right, bottom left in this order',
    );
}

/** Between four pixels by their distances; at the last row and column by two. */
function sampled({ pixels, rows, cols }: GreyImage, [x, y]: Pixel): number {
  const col = Math.min(Math.max(0, Math.floor(x)), Math.max(0, cols - 2));
  const row = Math.min(Math.max(0, Math.floor(y)), Math.max(0, rows - 2));
  const [fx, fy] = [x - col, y - row];
  const i = row * cols + col;
  const above = pixels[i]! * (1 - fx) + pixels[i + 1]! * fx;
  const below = pixels[i + cols]! * (1 - fx) + pixels[i + cols + 1]! * fx;
  return above * (1 - fy) + below * fy;
}
