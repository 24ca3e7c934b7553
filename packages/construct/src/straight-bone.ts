/** A straight round bone with a frame on it, as a case: what tests vary one thing at a time. */
import type { Case } from './model/case-file.ts';
import { readCase } from './read-case.ts';

/** sMm, then tilt and direction about the bone where they are not 0. */
export type PinAt = readonly [sMm: number, tiltDeg?: number, aboutDeg?: number];

export interface StraightBone {
  readonly species?: string;
  readonly lengthMm: number;
  readonly outerMm: number;
  readonly canalMm: number;
  readonly boneYoungMPa?: number;
  readonly gapMm: number;
  readonly pinMm: number;
  readonly pinMaterial?: string;
  readonly pins: readonly PinAt[];
  readonly columnMm: number;
  readonly columnMaterial?: string;
  readonly columnYoungMPa?: number;
  readonly clearanceMm: number;
  readonly twoColumns?: boolean;
  readonly im?: { readonly diameterMm: number; readonly tiedIn: boolean };
  readonly grip?: 'usual' | 'bonded';
  /** Small ones by default, so that no gap closes. */
  readonly loads?: { readonly axialN?: number; readonly bendingNmm?: number; readonly torsionNmm?: number };
}

const SMALL = { axialN: 0.01, bendingNmm: 0.01, torsionNmm: 0.01 };

/** The case; the fracture lies in the middle, open by `gapMm`. */
export function straightBone(bone: StraightBone): Case {
  const { lengthMm, outerMm, canalMm, gapMm, im, columnMaterial = 'acrylic', pinMaterial = 'steel-cold-worked' } = bone;
  const column = { drawerId: 'column', clearanceMm: bone.clearanceMm };
  return readCase({
    patient: { species: bone.species ?? 'rabbit', massG: 1000 },
    bone: {
      name: 'tibia',
      lengthMm,
      stations: [0, lengthMm].map((sMm) => ({ sMm, outerMm: [outerMm, outerMm], canalMm: [canalMm, canalMm] })),
      youngMPa: bone.boneYoungMPa,
    },
    fracture: { fromMm: (lengthMm - gapMm) / 2, toMm: (lengthMm + gapMm) / 2, gapMm },
    drawer: {
      pins: [{ id: 'pin', diameterMm: bone.pinMm, kind: 'smooth', material: pinMaterial, count: bone.pins.length }],
      imPins: im ? [{ id: 'im', diameterMm: im.diameterMm, material: 'steel-cold-worked', count: 1 }] : [],
      columns: [{ id: 'column', material: columnMaterial, diameterMm: bone.columnMm, youngMPa: bone.columnYoungMPa }],
    },
    construct: {
      im: im ? { drawerId: 'im', tiedIn: im.tiedIn } : null,
      pins: bone.pins.map(([sMm, tiltDeg = 0, aboutDeg = 0]) => ({ drawerId: 'pin', sMm, tiltDeg, aboutDeg })),
      column: bone.twoColumns ? [column, { ...column, side: 'far' }] : column,
      grip: bone.grip ?? 'bonded',
    },
    loads: bone.loads ?? SMALL,
  });
}
