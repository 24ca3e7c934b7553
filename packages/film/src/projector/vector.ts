/** Vectors of space in millimetres: x along the columns, y along the rows, z from the detector to the source. */
export type Vector = readonly [number, number, number];

export const plus = (a: Vector, b: Vector, times = 1): Vector => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];
export const minus = (a: Vector, b: Vector): Vector => plus(a, b, -1);
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const length = (a: Vector): number => Math.sqrt(dot(a, a));

export function unit(a: Vector): Vector {
  const n = length(a);
  return [a[0] / n, a[1] / n, a[2] / n];
}

export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** A right-handed frame in space. */
export interface Frame3 {
  readonly origin: Vector;
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
}

/** A frame whose z runs along `along` and whose x is as near `near` as it can be. */
export function frameAlong(origin: Vector, along: Vector, near: Vector): Frame3 {
  const z = unit(along);
  const x = unit(plus(near, z, -dot(near, z)));
  return { origin, x, y: cross(z, x), z };
}

export const toLocal = (f: Frame3, p: Vector): Vector => {
  const d = minus(p, f.origin);
  return [dot(d, f.x), dot(d, f.y), dot(d, f.z)];
};

export const toWorld = (f: Frame3, p: Vector): Vector => plus(plus(plus(f.origin, f.x, p[0]), f.y, p[1]), f.z, p[2]);
