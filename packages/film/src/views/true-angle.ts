/** True angulation and its plane from the angles seen in two views, square to each other or not. */
import { InputError } from '@bonewright/fault';

export interface TrueAngle {
  readonly trueAngulationDeg: number;
  /** Plane of the bend, turned from the first view's plane towards the second's. */
  readonly planeFromFirstViewDeg: number;
}

const RADIANS = Math.PI / 180;
/** Views closer together than this see the same thing twice. */
const LEAST_BETWEEN_DEG = 10;

/**
 * Angles seen in two views (degrees, signed by side) whose planes lie `betweenViewsDeg` apart.
 * tan(angle) is a vector across the bone, each view sees its part: x = tan a, y = (tan b - tan a cos g) / sin g.
 * Throws InputError for views too close together and for bends of 90 degrees or more.
 * Source of the square case: single-cut osteotomy derivation, Orthopedic Reviews.
 */
export function trueAngle(angulationsDeg: readonly [number, number], betweenViewsDeg: number): TrueAngle {
  for (const [i, a] of angulationsDeg.entries()) {
    if (!(Math.abs(a) < 90)) {
      throw new InputError(
        `an angulation of ${a} degrees is no bend of a bone`,
        `views[${i}].angulationDeg`,
        'give it between -90 and 90',
      );
    }
  }
  const g = betweenViewsDeg * RADIANS;
  if (!(Math.abs(Math.sin(g)) >= Math.sin(LEAST_BETWEEN_DEG * RADIANS))) {
    throw new InputError(
      `views ${betweenViewsDeg} degrees apart show the same plane twice`,
      'betweenViewsDeg',
      `give views at least ${LEAST_BETWEEN_DEG} degrees apart`,
    );
  }
  const x = Math.tan(angulationsDeg[0] * RADIANS);
  const y = (Math.tan(angulationsDeg[1] * RADIANS) - x * Math.cos(g)) / Math.sin(g);
  return {
    trueAngulationDeg: Math.atan(Math.hypot(x, y)) / RADIANS,
    planeFromFirstViewDeg: Math.atan2(y, x) / RADIANS,
  };
}
