/** From where the construct is looked at. Screen axes: u to the right, v down (the bone stands, proximal end up), in mm. */
import type { Point3 } from '../placement.ts';

export interface Eye {
  /** Turned about the bone: 0 looks from caudal, medial to the right. */
  readonly turnDeg: number;
  /** Leaned towards the proximal end. */
  readonly leanDeg: number;
}

export type Flat = readonly [u: number, v: number];

export type Project = (point: Point3) => readonly [u: number, v: number, depth: number];

/** World [s, medial, cranial] to screen and depth; larger depth is nearer. */
export function projectFrom({ turnDeg, leanDeg }: Eye): Project {
  const [ct, st] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const [cl, sl] = [Math.cos((leanDeg * Math.PI) / 180), Math.sin((leanDeg * Math.PI) / 180)];
  return ([s, medial, cranial]) => {
    const u = medial * ct + cranial * st;
    const d = medial * st - cranial * ct;
    return [u, s * cl + d * sl, d * cl - s * sl];
  };
}

/** Unit vector [medial, cranial] from the bone towards the eye. */
export function towardsEye({ turnDeg }: Eye): readonly [number, number] {
  return [Math.sin((turnDeg * Math.PI) / 180), -Math.cos((turnDeg * Math.PI) / 180)];
}

/** Where the eye stands about the bone, 0 medial, +90 cranial. */
export const eyeAboutDeg = ({ turnDeg }: Eye): number => turnDeg - 90;
