/**
 * Section properties of a member: local y and z are its principal axes, odY measured along y.
 * Torsion constant 4 Iy Iz / (Iy + Iz), exact for circles and similar ellipses. Theory: docs/theory/frame.md.
 */
import type { Section } from '../model/frame-model.ts';

export interface SectionProperties {
  readonly areaMm2: number;
  /** Bending about local y, that is in the plane of x and z. */
  readonly iyMm4: number;
  readonly izMm4: number;
  readonly jMm4: number;
  /** Outer half sizes along local y and z; null where the outline is unknown (`properties`). */
  readonly outline: { readonly halfYMm: number; readonly halfZMm: number } | null;
}

/** Area, second moments, torsion constant and outline of a section. Sizes must be sound (`readFrame` sees to it). */
export function sectionProperties(section: Section): SectionProperties {
  switch (section.shape) {
    case 'round':
      return ellipticTube(section.od, section.od, 0, 0);
    case 'tube':
      return ellipticTube(section.od, section.od, section.id, section.id);
    case 'ovalTube':
      return ellipticTube(section.odY, section.odZ, section.idY, section.idZ);
    case 'properties':
      return { areaMm2: section.A, iyMm4: section.Iy, izMm4: section.Iz, jMm4: section.J, outline: null };
  }
}

function ellipticTube(odY: number, odZ: number, idY: number, idZ: number): SectionProperties {
  const iyMm4 = (Math.PI / 64) * (odY * odZ ** 3 - idY * idZ ** 3);
  const izMm4 = (Math.PI / 64) * (odZ * odY ** 3 - idZ * idY ** 3);
  return {
    areaMm2: (Math.PI / 4) * (odY * odZ - idY * idZ),
    iyMm4,
    izMm4,
    jMm4: (4 * iyMm4 * izMm4) / (iyMm4 + izMm4),
    outline: { halfYMm: odY / 2, halfZMm: odZ / 2 },
  };
}

/**
 * Timoshenko shear coefficient (shear area over area), Cowper 1966, for a solid or hollow circle; an oval takes the
 * mean of its two bore ratios. 0, no shear flexibility, where only properties are known.
 */
export function shearCoefficient(section: Section, poisson: number): number {
  const m2 = boreRatio(section) ** 2;
  if (section.shape === 'properties') return 0;
  const round = (1 + m2) ** 2;
  return (6 * (1 + poisson) * round) / ((7 + 6 * poisson) * round + (20 + 12 * poisson) * m2);
}

function boreRatio(section: Section): number {
  if (section.shape === 'tube') return section.id / section.od;
  if (section.shape === 'ovalTube') return (section.idY / section.odY + section.idZ / section.odZ) / 2;
  return 0;
}
