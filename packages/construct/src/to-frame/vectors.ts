/** Vectors [distal, medial, cranial] in mm. */
import type { Vec3 } from '@bonewright/frame';

export const plus = (a: Vec3, b: Vec3, times = 1): Vec3 => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];
export const minus = (a: Vec3, b: Vec3): Vec3 => plus(a, b, -1);
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const lengthOf = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const unit = (a: Vec3): Vec3 => plus([0, 0, 0], a, 1 / (lengthOf(a) || 1));

const RADIANS = Math.PI / 180;

/** Direction about the bone's axis, square to it: 0 medial, 90 cranial. */
export const radial = (aboutDeg: number): Vec3 => [0, Math.cos(aboutDeg * RADIANS), Math.sin(aboutDeg * RADIANS)];

/** Direction in which a pin leaves the near wall: square to the axis but for its tilt, positive leaning distally. */
export function outward(aboutDeg: number, tiltDeg: number): Vec3 {
  const [, y, z] = radial(aboutDeg);
  const flat = Math.cos(tiltDeg * RADIANS);
  return [Math.sin(tiltDeg * RADIANS), y * flat, z * flat];
}

/** Directions that add up to less than this cancel. */
const NOTHING = 1e-9;

/** Mean direction of several, turned the short way round; 0 where they cancel. */
export function meanAboutDeg(aboutDegs: readonly number[]): number {
  const sum = aboutDegs.reduce<Vec3>((total, about) => plus(total, radial(about)), [0, 0, 0]);
  return lengthOf(sum) < NOTHING ? 0 : Math.atan2(sum[2], sum[1]) / RADIANS;
}
