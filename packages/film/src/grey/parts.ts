/** Parts of an image and smaller images of it, for showing no more pixels than a screen has. */
import type { GreyImage } from '../model/film.ts';

/** A part of an image, in whole pixels; right and bottom are not in it. */
export interface Region {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** That part alone, as an image of its own; it has to lie inside. */
export function cutOut(image: GreyImage, { left, top, right, bottom }: Region): GreyImage {
  const { cols, pixels } = image;
  const width = right - left;
  const part = pixels.slice(0, width * (bottom - top));
  for (let row = top; row < bottom; row++)
    part.set(pixels.subarray(row * cols + left, row * cols + right), (row - top) * width);
  return { ...image, pixels: part, rows: bottom - top, cols: width };
}

/** Half as wide and high: each pixel the mean of four, at an odd edge of the two or the one that are there. */
export function halved(image: GreyImage): GreyImage {
  const { rows, cols, pixels } = image;
  const [halfRows, halfCols] = [Math.ceil(rows / 2), Math.ceil(cols / 2)];
  const half = pixels.slice(0, halfRows * halfCols);
  for (let row = 0; row < halfRows; row++) {
    const above = 2 * row * cols;
    const below = Math.min(2 * row + 1, rows - 1) * cols;
    for (let col = 0; col < halfCols; col++) {
      const left = 2 * col;
      const right = left + 1 < cols ? left + 1 : left;
      half[row * halfCols + col] =
        (pixels[above + left]! + pixels[above + right]! + pixels[below + left]! + pixels[below + right]!) / 4;
    }
  }
  return { ...image, pixels: half, rows: halfRows, cols: halfCols };
}
