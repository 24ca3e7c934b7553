/** Stresses at a member's end from its six forces [N Vy Vz T My Mz] in local axes. */
import { neutralWeight } from './holes.ts';
import type { ColumnSection, HoleSection, RodSection } from './sections.ts';

/** Six forces of a member's end, somewhere in a longer array. */
export interface EndForces {
  readonly all: Float64Array;
  at: number;
}

const VY = 1;
const VZ = 2;
const T = 3;
const MY = 4;
const MZ = 5;

/** Axial force in N, pushed or pulled. */
export const axialOf = ({ all, at }: EndForces): number => Math.abs(all[at]!);
export const shearOf = ({ all, at }: EndForces): number => Math.hypot(all[at + VY]!, all[at + VZ]!);

const vonMises = (normal: number, shear: number): number => Math.sqrt(normal * normal + 3 * shear * shear);

/** Largest von Mises stress of a round rod or tube in MPa. */
export function rodStress(forces: EndForces, { areaMm2, bendingPerMm3 }: RodSection): number {
  const { all, at } = forces;
  const bending = Math.hypot(all[at + MY]!, all[at + MZ]!) * bendingPerMm3;
  return vonMises(axialOf(forces) / areaMm2 + bending, (Math.abs(all[at + T]!) * bendingPerMm3) / 2);
}

/** Largest von Mises stress of a column in MPa. */
export function columnStress(forces: EndForces, section: ColumnSection): number {
  const { all, at } = forces;
  const bending = Math.hypot(all[at + MY]! * section.aboutYPerMm3, all[at + MZ]! * section.aboutZPerMm3);
  return vonMises(axialOf(forces) / section.areaMm2 + bending, Math.abs(all[at + T]!) * section.twistPerMm3);
}

/**
 * Largest stress in the bone at a pin's hole in MPa: nominal stress of the ring times the measured weakening, of
 * which bending takes less where the hole lies towards the neutral axis.
 */
export function holeStress(forces: EndForces, section: HoleSection): number {
  const { all, at } = forces;
  const { factor, towards } = section;
  const aboutY = all[at + MY]! * section.aboutYPerMm3;
  const aboutZ = all[at + MZ]! * section.aboutZPerMm3;
  const bending = Math.hypot(aboutY, aboutZ);
  const atHole = Math.abs(aboutZ * towards[0] - aboutY * towards[1]);
  const bendingFactor = 1 + (factor - 1) * neutralWeight(bending > 0 ? Math.min(1, atHole / bending) : 1);
  const normal = (factor * axialOf(forces)) / section.areaMm2 + bendingFactor * bending;
  return vonMises(normal, factor * Math.abs(all[at + T]!) * section.twistPerMm3);
}
