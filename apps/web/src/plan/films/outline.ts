/** Outline of a round-ended bar of even width along a line, in the line's own units. */
import type { Pixel } from '@bonewright/film';

const ROUND_STEPS = 10;

export function outlineOf(line: readonly Pixel[], radius: number): Pixel[] {
  const first = line[0];
  const last = line.at(-1);
  if (!first || !last) return [];
  const turns = line.map((_, i) => angleAt(line, i));
  const edge = (side: 1 | -1) =>
    line.map(([x, y], i): Pixel => {
      const normal = turns[i]! + (side * Math.PI) / 2;
      return [x + Math.cos(normal) * radius, y + Math.sin(normal) * radius];
    });
  return [
    ...edge(1),
    ...roundEnd(last, turns.at(-1)! + Math.PI / 2, radius),
    ...edge(-1).toReversed(),
    ...roundEnd(first, turns[0]! - Math.PI / 2, radius),
  ];
}

/** Direction of the line at one of its points: from its neighbour before to its neighbour after. */
function angleAt(line: readonly Pixel[], i: number): number {
  const [before, after] = [line[i - 1] ?? line[i]!, line[i + 1] ?? line[i]!];
  return Math.atan2(after[1] - before[1], after[0] - before[0]);
}

/** Half a turn backwards from the start angle. */
function roundEnd([x, y]: Pixel, start: number, radius: number): Pixel[] {
  return Array.from({ length: ROUND_STEPS + 1 }, (_, i): Pixel => {
    const turn = start - (Math.PI * i) / ROUND_STEPS;
    return [x + Math.cos(turn) * radius, y + Math.sin(turn) * radius];
  });
}
