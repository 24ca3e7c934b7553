/** Which part of the drawing in space is seen, at one scale both ways. */
import type { Flat } from '../../drawing/geometry/space/eye.ts';
import type { Piece } from '../../drawing/geometry/space/piece.ts';
import type { Size } from '../../drawing/use-size.ts';

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

const ROOM_MM = 1.5;

/** Room for the whole bone whichever way it is turned, so that turning does not make it jump. */
export function frameOf(pieces: readonly Piece[], lengthMm: number, zoom: number, { width, height }: Size): Frame {
  const points = pieces.flatMap(({ face, ring, disc }) => (disc ? corners(disc) : [...face, ...ring]));
  const [uLow, uHigh] = reach(points.map(([u]) => u));
  const [vLow, vHigh] = reach(points.map(([, v]) => v));
  const tall = Math.max(lengthMm, vHigh - vLow) + 2 * ROOM_MM;
  const wide = uHigh - uLow + 2 * ROOM_MM;
  const pxPerMm = Math.min(width / wide, height / tall) * zoom;
  return {
    left: (uLow + uHigh) / 2 - width / 2 / pxPerMm,
    top: (vLow + vHigh) / 2 - height / 2 / pxPerMm,
    pxPerMm,
    widthPx: width,
    heightPx: height,
  };
}

function reach(values: readonly number[]): readonly [number, number] {
  return values.reduce<readonly [number, number]>(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}

function corners({ centre: [u, v], radii }: NonNullable<Piece['disc']>): Flat[] {
  const away = Math.max(...radii);
  return [
    [u - away, v - away],
    [u + away, v + away],
  ];
}
