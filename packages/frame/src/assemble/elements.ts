/** Members and springs as elements: rows of deformations from the geometry, their stiffness from the sizes. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { Bodies } from './bodies.ts';
import { MODES } from './deformations.ts';
import type { Topology } from './topology.ts';

export interface Elements {
  /** Bodies at each element's ends; -1 is the ground. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Member -> its element; -1 where both ends are on one body, which lets it do nothing. */
  readonly ofMember: Int32Array;
  readonly ofSpring: Int32Array;
}

/** Numbers the elements: members that can deform, then springs. */
export function listElements({ members, springs }: Topology, { of }: Bodies): Elements {
  const from: number[] = [];
  const to: number[] = [];
  const add = (a: number, b: number): number => {
    to.push(b < 0 ? -1 : of[b]!);
    return from.push(of[a]!) - 1;
  };
  const ofMember = members.from.map((a, i) => (of[a] === of[members.to[i]!] ? -1 : add(a, members.to[i]!)));
  const ofSpring = springs.from.map((a, i) => add(a, springs.to[i]!));
  return { from: Int32Array.from(from), to: Int32Array.from(to), ofMember, ofSpring };
}

/** Writes the stiffness of every deformation; `lengthsMm` holds one length a member. */
export function writeStiffness(
  stiffness: Float64Array,
  elements: Elements,
  inputs: FrameInputs,
  lengthsMm: Float64Array,
): void {
  for (let member = 0; member < elements.ofMember.length; member++) {
    const element = elements.ofMember[member]!;
    if (element >= 0) writeMemberStiffness(stiffness, element * MODES, inputs, member, lengthsMm[member]!);
  }
  for (let spring = 0; spring < elements.ofSpring.length; spring++) {
    const at = elements.ofSpring[spring]! * MODES;
    for (let k = 0; k < MODES; k++) stiffness[at + k] = inputs.springK[spring * MODES + k]!;
  }
}

/** Stretch, twist, and for bending about z and then y: difference and sum of the ends' turns. */
function writeMemberStiffness(
  stiffness: Float64Array,
  at: number,
  inputs: FrameInputs,
  member: number,
  lengthMm: number,
): void {
  const E = inputs.youngMPa[member]!;
  const G = inputs.shearModulusMPa[member]!;
  const area = inputs.areaMm2[member]!;
  const bendZ = (E * inputs.izMm4[member]!) / lengthMm;
  const bendY = (E * inputs.iyMm4[member]!) / lengthMm;
  const shear = inputs.shearCoefficient[member]! * G * area * lengthMm;
  stiffness[at] = (E * area) / lengthMm;
  stiffness[at + 1] = (G * inputs.jMm4[member]!) / lengthMm;
  stiffness[at + 2] = bendZ;
  stiffness[at + 3] = (3 * bendZ) / (1 + shearShare(bendZ, shear));
  stiffness[at + 4] = bendY;
  stiffness[at + 5] = (3 * bendY) / (1 + shearShare(bendY, shear));
}

/** 12 E I / (k G A L^2): bending stiffness over shear stiffness; 0 without shear. */
export function shearShare(bending: number, shear: number): number {
  return shear > 0 ? (12 * bending) / shear : 0;
}
