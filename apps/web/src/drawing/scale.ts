/** From millimetres to screen pixels at one scale both ways: s to the right, h up. */
import type { Point2 } from './geometry/side-profile.ts';

export interface Scale {
  readonly pxPerMm: number;
  readonly originX: number;
  readonly originY: number;
  readonly x: (sMm: number) => number;
  readonly y: (hMm: number) => number;
}

export function scaleOf(pxPerMm: number, originX: number, originY: number): Scale {
  return { pxPerMm, originX, originY, x: (sMm) => originX + sMm * pxPerMm, y: (hMm) => originY - hMm * pxPerMm };
}

export const isSameScale = (a: Scale, b: Scale): boolean =>
  a.pxPerMm === b.pxPerMm && a.originX === b.originX && a.originY === b.originY;

/** SVG path through points; closed where asked. */
export function pathOf(points: readonly Point2[], { x, y }: Scale, closed = false): string {
  const steps = points.map(([s, h], i) => `${i === 0 ? 'M' : 'L'}${x(s).toFixed(2)} ${y(h).toFixed(2)}`);
  return steps.join('') + (closed ? 'Z' : '');
}

/** SVG path through points with its corners rounded, radius in pixels. */
export function roundedPath(points: readonly Point2[], { x, y }: Scale, radius: number): string {
  const px = points.map(([s, h]) => [x(s), y(h)] as const);
  const steps = px.map((point, i) => {
    const before = px[i - 1];
    const after = px[i + 1];
    if (!before) return `M${at(point)}`;
    if (!after) return `L${at(point)}`;
    return `L${at(towards(point, before, radius))}Q${at(point)} ${at(towards(point, after, radius))}`;
  });
  return steps.join('');
}

type Px = readonly [number, number];
const at = ([px, py]: Px) => `${px.toFixed(2)} ${py.toFixed(2)}`;

function towards(from: Px, to: Px, most: number): Px {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const t = length === 0 ? 0 : Math.min(most, length / 2) / length;
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
}
