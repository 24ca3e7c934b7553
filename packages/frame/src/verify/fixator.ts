/**
 * The benchmark frame: a bone in two fragments along x, pins square to it, a column parallel to it. Bernoulli beams,
 * rigid joints on centre lines. Used with a closed form and a table of variants computed by another solver.
 */
import type { FrameModel, Section, Vec6 } from '../model/frame-model.ts';
import { at, onlyLoad } from './wire.ts';

export interface Fixator {
  readonly pinsMm: readonly number[];
  readonly pin: Section;
  readonly offsetMm: number;
  readonly column: Section;
  readonly columnMPa: number;
  readonly columnNu: number;
  readonly boneMPa: number;
  readonly bone: Section;
  readonly gapMm: number;
  readonly boneToMm: number;
  /** A second column on the other side, the pins running through. */
  readonly isTwoSided: boolean;
}

export const BASE: Fixator = {
  pinsMm: [5, 15],
  pin: { shape: 'round', od: 1.6 },
  offsetMm: 12,
  column: { shape: 'round', od: 6 },
  columnMPa: 2500,
  columnNu: 0.38,
  boneMPa: 15000,
  bone: { shape: 'tube', od: 6, id: 4 },
  gapMm: 2,
  boneToMm: 25,
  isTwoSided: false,
};

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const;
const BALL: FrameModel['supports'] = { proximal: ['x', 'y', 'z', 'rx'], distal: ['y', 'z'] };
const GUIDED: FrameModel['supports'] = { proximal: ALL, distal: ['y', 'z', 'rx', 'ry', 'rz'] };
const TWIST: FrameModel['supports'] = { proximal: ALL, distal: ['y', 'z'] };

/** Stiffness in N/mm (axial) and N·mm/deg (turning), in the order of the table. */
export function stiffnesses(fixator: Fixator): number[] {
  const bend = (k: number) => {
    const six = (sign: number) => sixOf(k, sign);
    const { displacements } = solve(fixator, BALL, { proximal: six(-1), distal: six(1) });
    return perDegree(at(displacements, 'distal', k) - at(displacements, 'proximal', k));
  };
  const axial = (supports: FrameModel['supports']) =>
    1 / at(solve(fixator, supports, { distal: sixOf(0, 1) }).displacements, 'distal', 0);
  const twist = at(solve(fixator, TWIST, { distal: sixOf(3, 1) }).displacements, 'distal', 3);
  return [axial(BALL), axial(GUIDED), perDegree(twist), bend(5), bend(4)];
}

const perDegree = (turnRad: number): number => Math.PI / 180 / turnRad;

function sixOf(k: number, value: number): Vec6 {
  const at6 = (i: number) => (i === k ? value : 0);
  return [at6(0), at6(1), at6(2), at6(3), at6(4), at6(5)];
}

function solve(fixator: Fixator, supports: FrameModel['supports'], load: FrameModel['loads'][string]) {
  return onlyLoad({ ...fixatorModel(fixator), supports, loads: { one: load } });
}

export function fixatorModel(f: Fixator): FrameModel {
  const nodes: Record<string, [number, number, number]> = {};
  const members: Record<string, FrameModel['members'][string]> = {};
  const pins = [...f.pinsMm.map((x) => -x).reverse(), ...f.pinsMm];
  const beam = (from: string, to: string, section: string, material: string) => {
    members[`${from} to ${to}`] = { from, to, section, material };
  };
  const chain = (section: string, places: readonly number[], y: number, nodeOf: (x: number) => string) => {
    places.forEach((x, i) => {
      nodes[nodeOf(x)] = [x, y, 0];
      if (i > 0) beam(nodeOf(places[i - 1] ?? 0), nodeOf(x), section, section);
    });
  };
  const boneNode = (x: number) => (Math.abs(x) === f.boneToMm ? (x < 0 ? 'proximal' : 'distal') : `bone ${x}`);
  chain('bone', [-f.boneToMm, ...pins.filter((x) => x < 0), -f.gapMm / 2], 0, boneNode);
  chain('bone', [f.gapMm / 2, ...pins.filter((x) => x > 0), f.boneToMm], 0, boneNode);
  for (const side of f.isTwoSided ? [1, -1] : [1]) {
    const columnNode = (x: number) => `column ${side} ${x}`;
    chain('column', pins, side * f.offsetMm, columnNode);
    for (const x of pins) beam(boneNode(x), columnNode(x), 'pin', 'steel');
  }
  return {
    beam: 'euler',
    buckling: false,
    nodes,
    materials: {
      steel: { E: 193000, nu: 0.3 },
      column: { E: f.columnMPa, nu: f.columnNu },
      bone: { E: f.boneMPa, nu: 0.3 },
    },
    sections: { pin: f.pin, column: f.column, bone: f.bone },
    members,
    rigids: {},
    springs: {},
    contacts: {},
    sleeves: {},
    supports: {},
    loads: {},
  };
}
