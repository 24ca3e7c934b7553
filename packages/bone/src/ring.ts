/**
 * The elliptical annulus of a bone cut square to its axis. y points medially, z cranially.
 * Walls are met along a ray from the axis in the direction `aboutDeg` (0 medial, 90 cranial).
 */

export interface Ring {
  /** [medial to lateral, cranial to caudal]. */
  readonly outerMm: readonly [number, number];
  readonly canalMm: readonly [number, number];
}

export interface RingProperties {
  readonly areaMm2: number;
  /** Bending about y: across the medial plane. */
  readonly iyMm4: number;
  /** Bending about z: in the medial plane. */
  readonly izMm4: number;
  /** 4 Iy Iz / (Iy + Iz): exact for circles and for similar ellipses. */
  readonly jMm4: number;
}

/** Area and second moments of the ring. */
export function ringProperties({ outerMm: [oy, oz], canalMm: [cy, cz] }: Ring): RingProperties {
  const iy = (Math.PI / 64) * (oz ** 3 * oy - cz ** 3 * cy);
  const iz = (Math.PI / 64) * (oy ** 3 * oz - cy ** 3 * cz);
  return { areaMm2: (Math.PI / 4) * (oy * oz - cy * cz), iyMm4: iy, izMm4: iz, jMm4: (4 * iy * iz) / (iy + iz) };
}

export interface Wall {
  readonly outerRadiusMm: number;
  readonly canalRadiusMm: number;
  readonly wallMm: number;
  readonly midRadiusMm: number;
}

/** The wall met in that direction; the near and the far wall of a ring are alike. */
export function wallAt(ring: Ring, aboutDeg: number): Wall {
  const outerRadiusMm = radiusOf(ring.outerMm, aboutDeg);
  const canalRadiusMm = radiusOf(ring.canalMm, aboutDeg);
  return {
    outerRadiusMm,
    canalRadiusMm,
    wallMm: outerRadiusMm - canalRadiusMm,
    midRadiusMm: (outerRadiusMm + canalRadiusMm) / 2,
  };
}

/** Bone width seen square to a pin of that direction: what a hole weakens. */
export const widthAcross = (ring: Ring, aboutDeg: number): number => 2 * radiusOf(ring.outerMm, aboutDeg + 90);

function radiusOf([y, z]: readonly [number, number], aboutDeg: number): number {
  if (y <= 0 || z <= 0) return 0;
  const angle = (aboutDeg * Math.PI) / 180;
  return 1 / Math.hypot(Math.cos(angle) / (y / 2), Math.sin(angle) / (z / 2));
}
