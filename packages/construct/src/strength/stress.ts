/** Stresses at a member's end from its six forces [N Vy Vz T My Mz] (local axes), and what is left of the strength. */
import { ringProperties, sectionAt, widthAcross } from '@bonewright/bone';
import type { ColumnFigures, Figures, RodFigures } from '../model/figures.ts';
import type { Layout } from '../to-frame/layout.ts';
import { holeFactor, neutralWeight } from './holes.ts';

/** Six forces of a member's end, somewhere in a longer array. */
export interface EndForces {
  readonly all: Float64Array;
  readonly at: number;
}

const N = 0;
const VY = 1;
const VZ = 2;
const T = 3;
const MY = 4;
const MZ = 5;

const force = ({ all, at }: EndForces, which: number): number => all[at + which]!;

/** Axial force in N; its sign is that of the end it acts on. */
export const axialOf = (forces: EndForces): number => Math.abs(force(forces, N));
export const shearOf = (forces: EndForces): number => Math.hypot(force(forces, VY), force(forces, VZ));

const vonMises = (normal: number, shear: number): number => Math.sqrt(normal ** 2 + 3 * shear ** 2);

/** Largest von Mises stress of a round rod or tube in MPa. */
export function rodStress(
  forces: EndForces,
  { diameterMm, boreMm }: Pick<RodFigures, 'diameterMm' | 'boreMm'>,
): number {
  const area = (Math.PI / 4) * (diameterMm ** 2 - boreMm ** 2);
  const second = (Math.PI / 64) * (diameterMm ** 4 - boreMm ** 4);
  const lever = diameterMm / 2 / second;
  const bending = Math.hypot(force(forces, MY), force(forces, MZ)) * lever;
  return vonMises(axialOf(forces) / area + bending, (Math.abs(force(forces, T)) * lever) / 2);
}

/**
 * Largest von Mises stress of a round column whose section a rod of `slotMm` runs through, along local y.
 * The rod's slot takes from the section all along y; what the rod itself bears is left out.
 */
export function columnStress(forces: EndForces, { diameterMm: d, moulded }: ColumnFigures, slotMm: number): number {
  const slot = moulded ? slotMm : 0;
  const full = (Math.PI / 64) * d ** 4;
  const iz = full - (slot * d ** 3) / 12;
  const iy = full - (d * slot ** 3) / 12;
  const area = (Math.PI / 4) * d ** 2 - slot * d;
  const half = d / 2;
  const bending = Math.hypot((force(forces, MY) * half) / iy, (force(forces, MZ) * half) / iz);
  return vonMises(axialOf(forces) / area + bending, (Math.abs(force(forces, T)) * half) / (2 * iz));
}

/** Largest stress in the bone at a pin's hole in MPa: nominal stress of the ring times the measured weakening. */
export function holeStress(forces: EndForces, figures: Figures, layout: Layout, pin: number): number {
  const { crossing, direction } = layout.pins[pin]!;
  const ring = sectionAt(figures.profile, crossing[0]);
  const { areaMm2, iyMm4, izMm4, jMm4 } = ringProperties(ring);
  const [halfY, halfZ] = [ring.outerMm[0] / 2, ring.outerMm[1] / 2];
  const aboutY = force(forces, MY) / iyMm4;
  const aboutZ = force(forces, MZ) / izMm4;
  const bending = Math.hypot(aboutY * halfZ, aboutZ * halfY);
  const about = Math.atan2(direction[2], direction[1]);
  const atHole = Math.abs(aboutZ * halfY * Math.cos(about) - aboutY * halfZ * Math.sin(about));
  const aboutDeg = (about * 180) / Math.PI;
  const weakened = holeFactor(figures.pins[pin]!.coreMm / widthAcross(ring, aboutDeg), figures.holeShare);
  const bendingFactor = 1 + (weakened - 1) * neutralWeight(bending > 0 ? Math.min(1, atHole / bending) : 1);
  const normal = (weakened * axialOf(forces)) / areaMm2 + bendingFactor * bending;
  return vonMises(normal, (weakened * Math.abs(force(forces, T)) * Math.max(halfY, halfZ)) / jMm4);
}
