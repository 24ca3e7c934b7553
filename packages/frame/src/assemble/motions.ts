/** Between the motions of nodes and the unknowns of their bodies: loads in, displacements out. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { Freedoms } from './freedoms.ts';
import type { FollowerSupport } from './supports.ts';

/** Where the unknowns are: 6 numbers a body, and how bodies held at nodes that follow move. */
export interface Unknowns {
  readonly freedoms: Freedoms;
  readonly unknownOf: Int32Array;
  readonly followers: ReadonlyMap<number, FollowerSupport>;
}

const root6 = new Float64Array(6);

/** Adds a force and moment on a node, `loads[at..at+5]`, to the loads on the unknowns in one column of `x`. */
export function addNodeLoad(
  x: Float64Array,
  columns: number,
  column: number,
  { freedoms, unknownOf, followers }: Unknowns,
  nodesMm: Float64Array,
  node: number,
  loads: Float64Array,
  at: number,
): void {
  const body = freedoms.bodies.of[node]!;
  const root = freedoms.bodies.root[body]!;
  for (let k = 0; k < 6; k++) root6[k] = loads[at + k]!;
  for (let k = 0; k < 3; k++) {
    const [after, last] = [(k + 1) % 3, (k + 2) % 3];
    const [ra, rl] = [lever(nodesMm, node, root, after), lever(nodesMm, node, root, last)];
    root6[3 + k]! += ra * loads[at + last]! - rl * loads[at + after]!;
  }
  const basis = followers.get(body)?.basis;
  for (let k = 0; k < 6; k++) {
    const slot = body * 6 + k;
    if (freedoms.isUnknown[slot] === 0) continue;
    let force = root6[k]!;
    if (basis) {
      force = 0;
      for (let i = 0; i < 6; i++) force += basis[i * 6 + k]! * root6[i]!;
    }
    x[unknownOf[slot]! * columns + column]! += force;
  }
}

/** Writes the six motions of a node from one column of `x`. */
export function writeNodeMotion(
  out: Float64Array,
  at: number,
  { freedoms, unknownOf, followers }: Unknowns,
  nodesMm: Float64Array,
  node: number,
  x: Float64Array,
  columns: number,
  column: number,
): void {
  const body = freedoms.bodies.of[node]!;
  const root = freedoms.bodies.root[body]!;
  const basis = followers.get(body)?.basis;
  for (let k = 0; k < 6; k++) {
    let motion = 0;
    if (basis)
      for (let i = 0; i < 6; i++) motion += basis[k * 6 + i]! * x[unknownOf[body * 6 + i]! * columns + column]!;
    else motion = x[unknownOf[body * 6 + k]! * columns + column]!;
    root6[k] = motion;
  }
  for (let k = 0; k < 3; k++) {
    out[at + k] = root6[k]!;
    out[at + 3 + k] = root6[3 + k]!;
  }
  if (node === root) return;
  for (let k = 0; k < 3; k++) {
    const [after, last] = [(k + 1) % 3, (k + 2) % 3];
    const [ra, rl] = [lever(nodesMm, node, root, after), lever(nodesMm, node, root, last)];
    out[at + k]! += root6[3 + after]! * rl - root6[3 + last]! * ra;
  }
}

const lever = (nodesMm: Float64Array, node: number, root: number, k: number): number =>
  nodesMm[node * 3 + k]! - nodesMm[root * 3 + k]!;

/** Adds all load cases, one a column. Returns whether any acts on an unknown before `interior`. */
export function addLoads(
  x: Float64Array,
  columns: number,
  unknowns: Unknowns,
  inputs: FrameInputs,
  cases: number,
  interior: number,
): boolean {
  const { loads, nodesMm } = inputs;
  const nodes = nodesMm.length / 3;
  let isInside = false;
  for (let column = 0; column < cases; column++) {
    for (let node = 0; node < nodes; node++) {
      const at = (column * nodes + node) * 6;
      if (isIdle(loads, at)) continue;
      addNodeLoad(x, columns, column, unknowns, nodesMm, node, loads, at);
      isInside ||= touchesInterior(unknowns, node, interior);
    }
  }
  return isInside;
}

function isIdle(loads: Float64Array, at: number): boolean {
  for (let k = at; k < at + 6; k++) if (loads[k] !== 0) return false;
  return true;
}

function touchesInterior({ freedoms, unknownOf }: Unknowns, node: number, interior: number): boolean {
  const body = freedoms.bodies.of[node]!;
  for (let k = 0; k < 6; k++) if (unknownOf[body * 6 + k]! < interior) return true;
  return false;
}
