/**
 * Stiffness where steel meets bone and putty, about the pin's own axes. A joint is a short member along the pin:
 * its own stiffness along, in bending and in twist is the joint's; across the pin it is simply stiff.
 * Theory: docs/theory/construct.md, "Joints".
 */
import type { Wall } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Section } from '@bonewright/frame';
import type { Figures, PinFigures, RodFigures } from '../model/figures.ts';

export interface Joint {
  /** N/mm along the pin. */
  readonly along: number;
  /** N·mm/rad, both planes. */
  readonly rotation: number;
  /** N·mm/rad about the pin. */
  readonly twist: number;
}

/** A pin in one cortex: as bonded, and softened by the seat of living bone. */
export function cortexJoint(figures: Figures, pin: PinFigures, wall: Wall): Joint {
  const { boneYoungMPa, slack } = figures;
  const d = pin.coreMm;
  const t = Math.min(wall.wallMm, value('interface.cortex.thickest') * wall.outerRadiusMm);
  const shear = boneYoungMPa / (2 * (1 + value('bone.poisson')));
  const bonded: Joint = {
    along: value('interface.cortex.along'),
    rotation: (value('interface.cortex.rotation') * boneYoungMPa * d * t ** 3) / wall.outerRadiusMm,
    twist: Math.PI * shear * t * d ** 2,
  };
  if (slack === 0) return bonded;
  const seat = seatOf(pin, slack);
  const thread = pin.threaded ? value('interface.threaded-grip') : 1;
  return {
    along: inSeries(bonded.along, seat.along * thread),
    rotation: inSeries(bonded.rotation, seat.rotation),
    twist: inSeries(bonded.twist, seat.twist * thread),
  };
}

/** The seat of a pin in hand-moulded putty, beyond its flexible depth; null where bonded. */
export function puttyJoint(figures: Figures, rod: RodFigures): Joint | null {
  return figures.slack === 0 ? null : seatOf(rod, figures.slack);
}

function seatOf({ diameterMm }: RodFigures, slack: number): Joint {
  const modulus = value('interface.seat-modulus') / slack;
  return { along: modulus * diameterMm, rotation: modulus * diameterMm ** 3, twist: modulus * diameterMm ** 3 };
}

const inSeries = (a: number, b: number): number => 1 / (1 / a + 1 / b);

/** Length of the short member that stands for a joint. */
export const jointLengthMm = (diameterMm: number): number => diameterMm * value('interface.joint-length');

/** Modulus of joint members; only its products with their sections mean anything. */
export const JOINT_MATERIAL = { name: 'joint', E: 1000, nu: 0 } as const;

/** The section that gives a member of that length the joint's stiffness. */
export function jointSection(joint: Joint, lengthMm: number): Section {
  const { E } = JOINT_MATERIAL;
  const bending = (joint.rotation * lengthMm) / E;
  return {
    shape: 'properties',
    A: (joint.along * lengthMm) / E,
    Iy: bending,
    Iz: bending,
    J: (2 * joint.twist * lengthMm) / E,
  };
}
