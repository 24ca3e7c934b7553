/** Where the number of a mark stands: beside it, and clear of the other marks. All in screen pixels. */
import type { Pixel } from '@bonewright/film';

const PLACES: readonly Pixel[] = [
  [26, 0],
  [26, 20],
  [26, -20],
  [48, 0],
  [-26, 0],
  [-48, 0],
];
const ROOM_PX = 22;

/** From the mark to its balloon: the first place that is clear, or the usual one where none is. */
export function balloonFrom(mark: Pixel, others: readonly Pixel[]): Pixel {
  const isClear = ([dx, dy]: Pixel): boolean =>
    others.every(([x, y]) => Math.hypot(mark[0] + dx - x, mark[1] + dy - y) >= ROOM_PX);
  return PLACES.find(isClear) ?? PLACES[0]!;
}
